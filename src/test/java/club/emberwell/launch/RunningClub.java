package club.emberwell.launch;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.TimeUnit;

/** The packaged program over a database of a {@link DebianPostgres}, and one member of its club. */
final class RunningClub implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Map<String, String> MEMBER =
      Map.of("handle", "steady-hand", "password", "copper kettle 81 moss");

  /** What the program says when a new history begins, and when an index is made. */
  private static final String BEGAN = "restored, replaced or put back";

  private static final String BUILT = "Built the search index";

  private final HttpClient http =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
  private final PackagedProgram program;
  private final PostgresTools server;
  private final String database;
  private String token;
  private int begun;
  private int built;

  private RunningClub(PackagedProgram program, PostgresTools server, String database) {
    this.program = program;
    this.server = server;
    this.database = database;
  }

  /** Starts it on a home; whoever posts in it has joined. */
  static RunningClub start(PostgresTools server, String database, Path home) throws Exception {
    Map<String, String> environment =
        Map.of(
            "EMBERWELL_DATABASE_URL", server.url(database),
            "EMBERWELL_DATABASE_USER", PostgresTools.OWNER,
            "EMBERWELL_FIRST_DOOR", "open",
            "EMBERWELL_FIRST_READING_PUBLIC", "true",
            "EMBERWELL_DESK_FIRST_LOOK", "0",
            "JAVA_TOOL_OPTIONS", "-XX:TieredStopAtLevel=1");
    PackagedProgram program = PackagedProgram.start(home, environment);
    RunningClub club = new RunningClub(program, server, database);
    program.awaitReadiness(200);
    club.send(club.posting("/api/v1/members", MEMBER));
    club.signIn();
    return club;
  }

  private void signIn() throws Exception {
    Map<String, String> proof =
        Map.of("handle", MEMBER.get("handle"), "password", MEMBER.get("password"), "label", "t");
    token = null;
    HttpResponse<String> answer = send(posting("/api/v1/tokens", proof));
    assertEquals(201, answer.statusCode(), answer.body());
    token = JSON.readTree(answer.body()).get("token").asText();
  }

  /** From here on it is counted what the program says. */
  void count() throws IOException {
    begun = said(BEGAN);
    built = said(BUILT);
  }

  int newHistories() throws IOException {
    return said(BEGAN) - begun;
  }

  int newIndexes() throws IOException {
    return said(BUILT) - built;
  }

  private int said(String words) throws IOException {
    return program.output().split(words, -1).length - 1;
  }

  String post(String notes) throws Exception {
    Map<String, Object> laser =
        Map.of(
            "source", "co2",
            "wavelength", "10.6 um",
            "ratedPower", "40 W",
            "motion", "gantry",
            "regime", "cw");
    Map<String, Object> report =
        Map.of(
            "laser",
            laser,
            "material",
            "maple",
            "process",
            "surface-engraving",
            "settings",
            Map.of("power", "60 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"),
            "effect",
            "right",
            "notes",
            notes);
    HttpResponse<String> answer =
        send(
            posting("/api/v1/reports", report)
                .header("Idempotency-Key", UUID.randomUUID().toString()));
    assertEquals(201, answer.statusCode(), answer.body());
    return JSON.readTree(answer.body()).get("id").asText();
  }

  /** All that the search finds; its count is that of what it shows. */
  Set<String> found() throws Exception {
    HttpResponse<String> answer = send(request("/api/v1/reports?size=100").GET());
    Set<String> ids = new TreeSet<>();
    if (answer.statusCode() == 200) {
      JsonNode found = JSON.readTree(answer.body());
      found.get("hits").forEach(hit -> ids.add(hit.get("id").asText()));
      if (found.get("total").asInt() != ids.size()) {
        ids.add("total " + found.get("total"));
      }
    }
    return ids;
  }

  /** Reports behind the one range of this club. */
  int ranged() throws Exception {
    HttpResponse<String> answer = send(request("/api/v1/consensus").GET());
    assertEquals(200, answer.statusCode(), answer.body());
    return JSON.readTree(answer.body()).get("groups").get(0).get("reports").asInt();
  }

  private Set<String> stored() throws IOException {
    String live = "select id from entry where kind = 'report' and state = 'live'";
    return new TreeSet<>(server.ask(database, live).lines().toList());
  }

  /** What a program that keeps a copy is to ask with next. */
  String copied() throws Exception {
    HttpResponse<String> answer = send(request("/api/v1/reports/changes?size=100").GET());
    return JSON.readTree(answer.body()).get("next").asText();
  }

  int statusOfCopy(String cursor) throws Exception {
    return send(request("/api/v1/reports/changes?cursor=" + cursor).GET()).statusCode();
  }

  /**
   * Holds the program to its database: it finds, counts and ranges over what is stored, finds what
   * is posted now, and is ready from then on.
   */
  void agrees(String gone) throws Exception {
    await()
        .atMost(PATIENCE)
        .pollInterval(Duration.ofMillis(200))
        .untilAsserted(() -> assertEquals(stored(), found(), "found is not what is stored"));
    assertEquals(stored().size(), ranged(), "the range counts something else");
    assertEquals(404, send(request("/api/v1/reports/" + gone).GET()).statusCode());
    signIn();
    String fresh = post("posted afterwards");
    await().atMost(PATIENCE).until(() -> found().contains(fresh));
    assertEquals(stored(), found());
    for (int i = 0; i < 12; i++) {
      assertEquals(200, program.readiness(), this::log);
      TimeUnit.MILLISECONDS.sleep(250);
    }
    assertEquals(stored(), found());
  }

  /** What the program said, for whoever wonders. */
  String log() {
    try {
      return program.output();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private HttpRequest.Builder request(String path) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + program.port + path))
            .timeout(PATIENCE);
    return token == null ? request : request.header("Authorization", "Bearer " + token);
  }

  private HttpRequest.Builder posting(String path, Object body) throws IOException {
    return request(path)
        .header("Content-Type", "application/json")
        .POST(HttpRequest.BodyPublishers.ofString(JSON.writeValueAsString(body)));
  }

  private HttpResponse<String> send(HttpRequest.Builder request) throws Exception {
    return http.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  /** Ends as when it is told to stop. */
  @Override
  public void close() throws IOException {
    program.process.destroy();
    try {
      if (!program.process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
        program.process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
