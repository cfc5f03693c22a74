package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.containsString;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import java.io.IOException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Whoever sends slowly holds up nobody else. */
@QuarkusTest
@TestProfile(SlowSendersTest.Patient.class)
class SlowSendersTest {
  /** More than there are threads for requests. */
  private static final int MANY = 260;

  private static final int HALF_SENT = MANY + 10;
  private static final Duration TIME = Duration.ofSeconds(12);

  /** Generous: this tells an answer from a server that stands still. */
  private static final Duration ANSWERS = Duration.ofSeconds(10);

  private static final String FORM = "application/x-www-form-urlencoded";

  /** Many half-sent requests of one address, so that it is threads and not limits that decide. */
  public static class Patient implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "emberwell.limits.traffic.half-sent-of-one",
          Integer.toString(HALF_SENT),
          "emberwell.limits.traffic.half-sent-of-all",
          Integer.toString(2 * HALF_SENT),
          "emberwell.limits.traffic.requests-of-one",
          Integer.toString(2 * HALF_SENT),
          "emberwell.limits.traffic.body-time",
          TIME.toSeconds() + "S");
    }
  }

  @TestHTTPResource("/")
  URL server;

  private final List<RawCall> open = new ArrayList<>();

  @AfterEach
  void hangUp() throws IOException {
    for (RawCall call : open) {
      call.close();
    }
  }

  private RawCall halfSent(String path, String type, int length) throws IOException {
    RawCall call = new RawCall(server);
    open.add(call);
    call.send(
        "POST %s HTTP/1.1\r\nHost: localhost\r\nContent-Type: %s\r\nContent-Length: %d\r\n\r\nabc"
            .formatted(path, type, length));
    return call;
  }

  @Test
  void manyBodiesThatNeverEndHoldUpNeitherPagesNorHealth() throws IOException {
    given().get("/sign-in").then().statusCode(200);
    for (int i = 0; i < MANY; i++) {
      halfSent("/sign-in", FORM, 1000);
    }
    assertTimeoutPreemptively(
        ANSWERS,
        () -> {
          given().get("/q/health/live").then().statusCode(200);
          given().get("/sign-in").then().statusCode(200);
          People.json(Map.of()).post("/api/v1/tokens").then().statusCode(422);
        });
    // the time is over for all of them (RFC 9110, section 15.5.9)
    String answer = open.get(0).answer();
    assertTrue(answer.startsWith("HTTP/1.1 408 "), answer);
    assertTrue(answer.toLowerCase().contains("\nconnection: close"), answer);
  }

  @Test
  void largeBodiesThatNeverEndAreLeftInNoFolder() throws IOException {
    long before = kept();
    RawCall photo = halfSent("/api/v1/reports", "application/json", 200_000);
    RawCall form = halfSent("/post", "multipart/form-data; boundary=x", 3_000_000);
    await().until(() -> kept() == before + 2);
    form.close();
    String answer = photo.answer();
    assertTrue(answer.startsWith("HTTP/1.1 408 "), answer);
    assertTrue(answer.contains("application/problem+json"), answer);
    await().until(() -> kept() == before);
  }

  private static long kept() throws IOException {
    Path folder = Path.of(System.getProperty("java.io.tmpdir"), "uploads");
    if (!Files.isDirectory(folder)) {
      return 0;
    }
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.getFileName().toString().startsWith("emberwell-sent")).count();
    }
  }

  @Test
  void oneAddressHasSoManyHalfSentRequestsAndNoMore() throws IOException {
    for (int i = 0; i < HALF_SENT; i++) {
      halfSent("/sign-in", FORM, 1000);
    }
    await()
        .untilAsserted(
            () ->
                People.json(Map.of())
                    .post("/api/v1/tokens")
                    .then()
                    .statusCode(429)
                    .header("Retry-After", "5"));
    given().get("/sign-in").then().statusCode(200);
    for (RawCall call : open) {
      call.close();
    }
    await()
        .untilAsserted(() -> People.json(Map.of()).post("/api/v1/tokens").then().statusCode(422));
  }

  @Test
  void whatIsSentInPiecesArrivesWhole() throws Exception {
    String body = "{\"handle\": \"nobody-here\", \"password\": \"" + "x".repeat(150) + "\"}";
    RawCall call = new RawCall(server);
    open.add(call);
    call.send(
        "POST /api/v1/tokens HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
            + "Expect: 100-continue\r\nTransfer-Encoding: chunked\r\nConnection: close\r\n\r\n");
    assertEquals("HTTP/1.1 100 Continue", call.line());
    for (String piece : body.split("(?<=\\G.{40})")) {
      call.send(Integer.toHexString(piece.length()) + "\r\n" + piece + "\r\n");
    }
    call.send("0\r\n\r\n");
    String answer = call.answer();
    assertTrue(answer.contains("HTTP/1.1 422 "), answer);
    assertTrue(answer.contains("/label"), answer);
  }

  @Test
  void aBodyInPiecesBeyondTheLimitIsRefusedBeforeItEnds() throws IOException {
    RawCall call = new RawCall(server);
    open.add(call);
    call.send(
        "POST /api/v1/tokens HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
            + "Transfer-Encoding: chunked\r\n\r\n");
    String piece = "x".repeat(1 << 20);
    for (int i = 0; i < 34; i++) {
      if (!call.sent(Integer.toHexString(piece.length()) + "\r\n" + piece + "\r\n")) {
        break;
      }
    }
    assertTimeoutPreemptively(ANSWERS, call::answer);
    given().get("/sign-in").then().statusCode(200).body(containsString("<form"));
  }
}
