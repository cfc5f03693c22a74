package club.emberwell.launch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The verbs for one member's bench, beside a server and without one, on either database. */
@Tag("packaged")
@Tag("slow")
class BenchVerbsTest {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Map<String, String> OPEN = Map.of("EMBERWELL_FIRST_DOOR", "open");
  private static final Map<String, String> ADA =
      Map.of("handle", "ashgrove", "password", "copper kettle 81 moss", "label", "t");

  private final HttpClient http = HttpClient.newHttpClient();
  private Path home;
  private PackagedProgram server;

  @BeforeEach
  void makeHome() throws IOException {
    home = Files.createTempDirectory("emberwell-home-");
    Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  @AfterEach
  void end() throws Exception {
    if (server != null) {
      server.process.destroy();
      server.process.waitFor();
    }
    PostgresBinaries.deleteTree(home);
  }

  private String post(String path, String token, Object body) throws Exception {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port + "/api/v1/" + path))
            .header("Content-Type", "application/json")
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .POST(HttpRequest.BodyPublishers.ofString(JSON.writeValueAsString(body)));
    if (token != null) {
      request.header("Authorization", "Bearer " + token);
    }
    HttpResponse<String> answer = http.send(request.build(), HttpResponse.BodyHandlers.ofString());
    assertEquals(201, answer.statusCode(), answer.body());
    return answer.body();
  }

  /** A club of one, whose bench holds a fixture. */
  private void club(Map<String, String> settings) throws Exception {
    server = PackagedProgram.start(home, settings);
    server.awaitReadiness(200);
    post("members", null, Map.of("handle", ADA.get("handle"), "password", ADA.get("password")));
    String token = JSON.readTree(post("tokens", null, ADA)).get("token").asText();
    post("fixtures", token, Map.of("name", "Jig", "rows", 1, "columns", 1));
  }

  private String run(Map<String, String> settings, int code, String... words) throws Exception {
    PackagedProgram verb = PackagedProgram.start(home, settings, words);
    assertEquals(code, verb.awaitEnd(), verb.output());
    return verb.output();
  }

  /** What the home says of its club, without the moment at which it was last written. */
  private List<String> mark() throws IOException {
    return Files.readAllLines(home.resolve("club-id")).stream()
        .filter(line -> !line.startsWith("#"))
        .toList();
  }

  static Stream<Map<String, String>> databases() throws Exception {
    TestServer other = TestServer.shared();
    return Stream.of(
        OPEN,
        Map.of(
            "EMBERWELL_FIRST_DOOR",
            "open",
            "EMBERWELL_DATABASE_URL",
            other.jdbcUrl(other.freshDatabase()),
            "EMBERWELL_DATABASE_USER",
            "emberwell",
            "EMBERWELL_DATABASE_PASSWORD",
            other.password()));
  }

  @ParameterizedTest
  @MethodSource("databases")
  void aBenchIsSavedBesideTheServerAndRestoredWithoutIt(Map<String, String> settings)
      throws Exception {
    club(settings);
    Path file = home.resolve("bench.zip");
    List<String> mark = mark();
    assertTrue(
        run(settings, 0, "bench-save", "--member=Ashgrove", file.toString())
            .contains(file.toString()));
    assertTrue(
        run(settings, 2, "bench-save", "--member=ashgrove", file.toString())
            .contains("is there already"));
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    String beside =
        run(settings, 0, "bench-restore", "--member=ashgrove", "--preview", file.toString());
    assertTrue(beside.contains("Already here, alike: 1"), beside);
    assertTrue(beside.contains("Nothing was written."), beside);

    post("members", null, Map.of("handle", "beechwood", "password", ADA.get("password")));
    server.process.destroy();
    server.process.waitFor();
    server = null;
    String alone = run(settings, 0, "bench-restore", "--member=beechwood", file.toString());
    assertTrue(alone.contains("New: 1"), alone);
    assertTrue(alone.endsWith("Restored.\n"), alone);
    String again = run(settings, 0, "bench-restore", "--member=beechwood", file.toString());
    assertTrue(again.contains("Already here, alike: 1"), again);
    assertTrue(again.contains("New: 0"), again);
    assertEquals(mark, mark());
  }

  @Test
  void whatIsWrongIsSaidAndEndsWithTwo() throws Exception {
    club(OPEN);
    Path file = Files.writeString(home.resolve("no.zip"), "hello");
    assertTrue(
        run(OPEN, 2, "bench-restore", "--member=ashgrove", file.toString())
            .contains("no zip file"));
    assertTrue(
        run(OPEN, 2, "bench-restore", "--member=nobody", file.toString())
            .contains("No active member is called nobody."));
    assertTrue(
        run(OPEN, 2, "bench-restore", "--member=ashgrove", "nowhere.zip")
            .contains("cannot be read"));
    assertTrue(run(OPEN, 2, "bench-save", "x.zip").contains("--member"));
  }
}
