package club.emberwell.launch;

import club.emberwell.report.photo.Pictures;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.BooleanSupplier;

/**
 * A member's program that posts reports, changes them and adds photos under keys of its own, sends
 * each again until it is answered, and keeps what was acknowledged.
 */
final class CrashClient {
  /** Longer than any fault lasts, so that only a server that never comes back fails. */
  private static final Duration PATIENCE = Duration.ofSeconds(240);

  private static final Duration ANSWER = Duration.ofSeconds(15);
  private static final String PASSWORD = "copper kettle 81 moss";
  private static final ObjectMapper JSON = new ObjectMapper();

  /** What the server owes: the words of a report, its photos and how often it was changed. */
  static final class Kept {
    final String id;
    final List<String> photos = new ArrayList<>();
    String notes;
    int steps = 1;

    Kept(String id, String notes) {
      this.id = id;
      this.notes = notes;
    }
  }

  final String handle;

  /** By key, in the order of their acknowledgement. */
  final Map<String, Kept> kept = new TreeMap<>();

  /** How often an answer of each status was no acknowledgement. */
  final Map<Integer, Integer> refusals = new HashMap<>();

  private final List<Kept> touched = new ArrayList<>();
  private final HttpClient http =
      HttpClient.newBuilder()
          .version(HttpClient.Version.HTTP_1_1)
          .connectTimeout(Duration.ofSeconds(5))
          .build();
  private final int port;
  private final Random chance;
  private String token;

  CrashClient(String handle, int port, long seed) throws IOException, InterruptedException {
    this.handle = handle;
    this.port = port;
    this.chance = new Random(seed);
    Map<String, Object> proof = Map.of("handle", handle, "password", PASSWORD);
    require(201, json("/api/v1/members", "POST", proof));
    Map<String, Object> wish = Map.of("handle", handle, "password", PASSWORD, "label", "crash");
    token = read(require(201, json("/api/v1/tokens", "POST", wish))).get("token").asText();
  }

  /** Works while it shall; what is under way is brought to its end. */
  void work(BooleanSupplier on) throws IOException, InterruptedException {
    while (on.getAsBoolean()) {
      int die = chance.nextInt(10);
      if (kept.isEmpty() || die < 6) {
        post();
      } else if (die < 8) {
        change(any());
      } else {
        addPhoto(any());
      }
    }
  }

  /** Those it did something to since it was asked last. */
  List<Kept> touched() {
    List<Kept> all = List.copyOf(touched);
    touched.clear();
    return all;
  }

  private Kept any() {
    List<Kept> all = List.copyOf(kept.values());
    return all.get(chance.nextInt(all.size()));
  }

  private void post() throws IOException, InterruptedException {
    String key = UUID.randomUUID().toString();
    HttpRequest.Builder request =
        json("/api/v1/reports", "POST", report(key)).header("Idempotency-Key", key);
    String id = read(insist(request, 201)).get("id").asText();
    Kept fresh = new Kept(id, key);
    kept.put(key, fresh);
    touched.add(fresh);
  }

  /** Sent again it meets its own change: then the version is another and the words are the new. */
  private void change(Kept old) throws IOException, InterruptedException {
    HttpResponse<String> before = insist(get("/api/v1/reports/" + old.id), 200);
    String version = before.headers().firstValue("ETag").orElseThrow();
    String notes = UUID.randomUUID().toString();
    HttpRequest.Builder request =
        json("/api/v1/reports/" + old.id, "PUT", report(notes)).header("If-Match", version);
    HttpResponse<String> answer = insist(request, 200, 412);
    if (answer.statusCode() == 412) {
      HttpResponse<String> now = insist(get("/api/v1/reports/" + old.id), 200);
      if (!notes.equals(read(now).get("notes").asText())) {
        throw new AssertionError("nobody else changes " + old.id + ", yet it is another version");
      }
    }
    old.notes = notes;
    old.steps++;
    touched.add(old);
  }

  private void addPhoto(Kept report) throws IOException, InterruptedException {
    if (report.photos.size() >= 3) {
      return;
    }
    byte[] picture = Pictures.of(200 + chance.nextInt(400), 200, "png");
    HttpRequest.Builder request =
        asking("/api/v1/reports/" + report.id + "/photos")
            .header("Content-Type", "image/png")
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .POST(BodyPublishers.ofByteArray(picture));
    report.photos.add(read(insist(request, 201)).get("id").asText());
    report.steps++;
    touched.add(report);
  }

  /** Sends a request until it has one of these answers; the others must be passing. */
  HttpResponse<String> insist(HttpRequest.Builder request, Integer... wanted)
      throws IOException, InterruptedException {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    IOException last = null;
    while (System.nanoTime() < deadline) {
      try {
        HttpResponse<String> answer = http.send(request.build(), BodyHandlers.ofString());
        if (List.of(wanted).contains(answer.statusCode())) {
          return answer;
        }
        refusals.merge(answer.statusCode(), 1, Integer::sum);
        if (!passing(answer.statusCode())) {
          throw new AssertionError(answer.statusCode() + " " + answer.body());
        }
      } catch (IOException e) {
        last = e;
      }
      Thread.sleep(100);
    }
    throw new IOException("no answer within " + PATIENCE, last);
  }

  /** Under way already, too much, or a server that says itself that it cannot now. */
  private static boolean passing(int status) {
    return status == 409 || status == 429 || status == 500 || status == 503 || status == 507;
  }

  /** Whether a report is there as it was acknowledged. */
  boolean finds(Kept report) {
    try {
      HttpResponse<String> answer = insist(get("/api/v1/reports/" + report.id), 200, 404);
      return answer.statusCode() == 200 && report.notes.equals(read(answer).get("notes").asText());
    } catch (IOException | InterruptedException e) {
      throw new AssertionError(e);
    }
  }

  /** How many reports the search finds. */
  int total() throws IOException, InterruptedException {
    return read(insist(get("/api/v1/reports?size=1"), 200)).get("total").asInt();
  }

  /** Posts once, for better or worse. */
  HttpResponse<String> send(String path, Object body) throws IOException, InterruptedException {
    HttpRequest.Builder request =
        json(path, "POST", body).header("Idempotency-Key", UUID.randomUUID().toString());
    return http.send(request.build(), BodyHandlers.ofString());
  }

  HttpRequest.Builder get(String path) {
    return asking(path).GET();
  }

  static JsonNode read(HttpResponse<String> answer) throws IOException {
    return JSON.readTree(answer.body());
  }

  private HttpRequest.Builder asking(String path) {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path)).timeout(ANSWER);
    return token == null ? request : request.header("Authorization", "Bearer " + token);
  }

  private HttpRequest.Builder json(String path, String method, Object body) throws IOException {
    return asking(path)
        .header("Content-Type", "application/json")
        .method(method, BodyPublishers.ofString(JSON.writeValueAsString(body)));
  }

  private HttpResponse<String> require(int status, HttpRequest.Builder request)
      throws IOException, InterruptedException {
    HttpResponse<String> answer = http.send(request.build(), BodyHandlers.ofString());
    if (answer.statusCode() != status) {
      throw new AssertionError(answer.statusCode() + " " + answer.body());
    }
    return answer;
  }

  private static Map<String, Object> report(String notes) {
    Map<String, Object> laser = new HashMap<>();
    laser.put("source", "co2");
    laser.put("wavelength", "10.6 um");
    laser.put("ratedPower", "40 W");
    laser.put("motion", "gantry");
    laser.put("regime", "cw");
    Map<String, Object> settings = new HashMap<>();
    settings.put("power", "60 %");
    settings.put("speed", "400 mm/s");
    settings.put("lineSpacing", "0.1 mm");
    Map<String, Object> report = new HashMap<>();
    report.put("laser", laser);
    report.put("material", "maple");
    report.put("process", "surface-engraving");
    report.put("settings", settings);
    report.put("effect", "right");
    report.put("notes", notes);
    return report;
  }
}
