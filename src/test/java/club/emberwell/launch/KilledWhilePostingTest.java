package club.emberwell.launch;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The packaged program and its database are killed while several people's programs post reports:
 * what was answered with 201 is there afterwards, and what was not is sent again under its key.
 */
@Tag("packaged")
@Tag("slow")
class KilledWhilePostingTest {
  private static final int WRITERS = 4;
  private static final int ENOUGH = 40;
  private static final Duration PATIENCE = Duration.ofSeconds(30);
  private static final String HANDLE = "steady-hand";
  private static final String PASSWORD = "copper kettle 81 moss";
  private static final ObjectMapper JSON = new ObjectMapper();

  /** A club that anybody can join and whose newcomers' reports appear at once. */
  private static final Map<String, String> OPEN =
      Map.of(
          "EMBERWELL_FIRST_DOOR", "open",
          "EMBERWELL_FIRST_READING_PUBLIC", "true",
          "EMBERWELL_DESK_FIRST_LOOK", "0",
          // two short lives: what the second compiler would gain comes too late
          "JAVA_TOOL_OPTIONS", "-XX:TieredStopAtLevel=1");

  private final HttpClient http =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  /** Idempotency key of each report that was sent, and the id of those that were acknowledged. */
  private final Set<String> sent = ConcurrentHashMap.newKeySet();

  private final Map<String, String> acknowledged = new ConcurrentHashMap<>();
  private Path home;
  private PackagedProgram program;
  private String token;

  @BeforeEach
  void start() throws Exception {
    home = Files.createTempDirectory("emberwell-home-");
    Files.setPosixFilePermissions(home, PosixFilePermissions.fromString("rwxr-xr-x"));
    program = PackagedProgram.start(home, OPEN);
    program.awaitReadiness(200);
  }

  @AfterEach
  void end() throws Exception {
    killBoth();
    PostgresBinaries.deleteTree(home);
  }

  @Test
  void noAcknowledgedReportIsLostAndNoneIsThereTwice() throws Exception {
    join();
    postUntilKilled();
    assertTrue(acknowledged.size() >= ENOUGH, acknowledged.size() + " were acknowledged");
    Set<String> open = new HashSet<>(sent);
    open.removeAll(acknowledged.keySet());
    assertTrue(!open.isEmpty(), "nothing was under way when the program was killed");

    program = PackagedProgram.start(home, OPEN);
    program.awaitReadiness(200);
    Map<String, String> all = new ConcurrentHashMap<>(acknowledged);
    for (String key : open) {
      all.put(key, sendAgain(key));
    }
    for (Map.Entry<String, String> each : all.entrySet()) {
      HttpResponse<String> found = send(request("/api/v1/reports/" + each.getValue()).GET());
      assertEquals(200, found.statusCode(), "a report that was acknowledged is lost");
      assertEquals(each.getKey(), JSON.readTree(found.body()).get("notes").asText());
    }
    // a sample of the acknowledged ones once more: the answer is the old one
    for (String key : acknowledged.keySet().stream().limit(5).toList()) {
      assertEquals(acknowledged.get(key), sendAgain(key));
    }
    assertEquals(all.values().stream().sorted().toList(), searched(all.size()));
  }

  private void join() throws Exception {
    Map<String, String> entry = Map.of("handle", HANDLE, "password", PASSWORD);
    assertEquals(201, send(posting("/api/v1/members", entry)).statusCode());
    Map<String, String> proof = Map.of("handle", HANDLE, "password", PASSWORD, "label", "test");
    token = JSON.readTree(send(posting("/api/v1/tokens", proof)).body()).get("token").asText();
  }

  private void postUntilKilled() throws Exception {
    List<Thread> writers = new ArrayList<>();
    for (int i = 0; i < WRITERS; i++) {
      Thread writer = new Thread(this::postOn, "writer " + i);
      writer.start();
      writers.add(writer);
    }
    await()
        .atMost(PATIENCE)
        .pollInterval(Duration.ofMillis(5))
        .until(() -> acknowledged.size() >= ENOUGH);
    killBoth();
    for (Thread writer : writers) {
      writer.join(PATIENCE.toMillis());
    }
  }

  /** Posts one report after the other until nobody answers. */
  private void postOn() {
    try {
      while (true) {
        String key = UUID.randomUUID().toString();
        sent.add(key);
        HttpResponse<String> answer = send(posting(key));
        if (answer.statusCode() == 201) {
          acknowledged.put(key, JSON.readTree(answer.body()).get("id").asText());
        }
      }
    } catch (IOException e) {
      // the program is gone
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private String sendAgain(String key) throws IOException, InterruptedException {
    HttpResponse<String> answer = send(posting(key));
    assertEquals(201, answer.statusCode(), answer.body());
    return JSON.readTree(answer.body()).get("id").asText();
  }

  /** The ids of all the member's reports that the search finds, once it has caught up. */
  private List<String> searched(int expected) {
    return await().atMost(PATIENCE).until(this::searched, ids -> ids.size() >= expected);
  }

  private List<String> searched() throws Exception {
    List<String> ids = new ArrayList<>();
    int total = 1;
    for (int page = 0; ids.size() < total; page++) {
      String query = "/api/v1/reports?size=50&member=" + HANDLE + "&page=" + page;
      JsonNode found = JSON.readTree(send(request(query).GET()).body());
      total = found.get("total").asInt();
      int before = ids.size();
      found.get("hits").forEach(hit -> ids.add(hit.get("id").asText()));
      if (ids.size() == before) {
        break;
      }
    }
    ids.sort(null);
    return ids;
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

  /** A report whose notes are its key. */
  private HttpRequest.Builder posting(String key) throws IOException {
    Map<String, Object> laser =
        Map.of(
            "source", "co2",
            "wavelength", "10.6 um",
            "ratedPower", "40 W",
            "motion", "gantry",
            "regime", "cw");
    Map<String, Object> settings =
        Map.of("power", "60 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm");
    return posting(
            "/api/v1/reports",
            Map.of(
                "laser",
                laser,
                "material",
                "maple",
                "process",
                "surface-engraving",
                "settings",
                settings,
                "effect",
                "right",
                "notes",
                key))
        .header("Idempotency-Key", key);
  }

  private HttpResponse<String> send(HttpRequest.Builder request)
      throws IOException, InterruptedException {
    return http.send(request.build(), HttpResponse.BodyHandlers.ofString());
  }

  private void killBoth() throws Exception {
    List<ProcessHandle> doomed = new ArrayList<>(List.of(program.process.toHandle()));
    doomed.addAll(Killing.serverOf(home.resolve("postgres/data")));
    Killing.kill(doomed);
  }
}
