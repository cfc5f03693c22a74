package club.emberwell.report.photo;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.report.Bodies;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import jakarta.inject.Inject;
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
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** One member sends more pictures than the server can make ready; all others notice nothing. */
@QuarkusTest
class UploadFloodTest {
  private static final int FLOOD = 230;

  /** Too many half sent at a time, or too many at the desk of the pictures. */
  private static final Set<Integer> LATER = Set.of(429, 503);

  private static final String BUSY = "/problems/pictures-busy";

  /** Far above what an answer takes on a busy machine, far below what the flood would. */
  private static final Duration SOON = Duration.ofSeconds(60);

  @Inject PictureTurns turns;

  private final HttpClient client =
      HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

  private Person ada;

  @BeforeEach
  void join() {
    ada = People.join();
  }

  private static URI at(String path) {
    return URI.create(RestAssured.baseURI + ":" + RestAssured.port + path);
  }

  private static HttpRequest upload(Person person, String report, byte[] picture) {
    return HttpRequest.newBuilder(at("/api/v1/reports/" + report + "/photos"))
        .header("Authorization", "Bearer " + person.token())
        .header("Idempotency-Key", Bodies.key())
        .header("Content-Type", "application/octet-stream")
        .POST(BodyPublishers.ofByteArray(picture))
        .build();
  }

  private HttpResponse<String> soon(HttpRequest request) {
    return client
        .sendAsync(request, BodyHandlers.ofString())
        .orTimeout(SOON.toSeconds(), TimeUnit.SECONDS)
        .join();
  }

  @Test
  void aFloodOfLargePicturesLeavesEverybodyElseTheirAnswers() throws Exception {
    Person bob = People.join();
    String flooded = Bodies.post(ada, Bodies.report());
    String other = Bodies.post(bob, Bodies.report());
    byte[] hostile = HostilePictures.lossyWebp(6324, 6324);
    List<CompletableFuture<HttpResponse<String>>> all = new ArrayList<>();
    for (int i = 0; i < FLOOD; i++) {
      all.add(client.sendAsync(upload(ada, flooded, hostile), BodyHandlers.ofString()));
    }
    for (String path : List.of("/", "/q/health/live", "/", "/api/v1/reports")) {
      assertEquals(200, soon(HttpRequest.newBuilder(at(path)).build()).statusCode(), path);
    }
    HttpResponse<String> own = soon(upload(bob, other, Pictures.of(300, 200, "jpeg")));
    assertEquals(201, own.statusCode(), own.body());
    Map<Integer, Integer> answers = new HashMap<>();
    for (CompletableFuture<HttpResponse<String>> one : all) {
      HttpResponse<String> answer = one.orTimeout(2, TimeUnit.MINUTES).join();
      answers.merge(answer.statusCode(), 1, Integer::sum);
      if (LATER.contains(answer.statusCode())) {
        assertEquals("5", answer.headers().firstValue("Retry-After").orElse(""));
      }
      if (answer.statusCode() == 503) {
        assertTrue(answer.body().contains(BUSY), answer.body());
      }
    }
    assertTrue(Set.of(201, 422, 429, 503).containsAll(answers.keySet()), answers.toString());
    assertTrue(answers.getOrDefault(201, 0) >= 1, answers.toString());
    assertTrue(answers.getOrDefault(503, 0) >= 1, answers.toString());
    int later = LATER.stream().mapToInt(status -> answers.getOrDefault(status, 0)).sum();
    assertTrue(later > FLOOD / 2, answers.toString());
    String next = Bodies.post(ada, Bodies.report());
    assertEquals(201, soon(upload(ada, next, Pictures.of(300, 200, "png"))).statusCode());
  }

  /** Takes all that a member may have at work and waiting. */
  private CountDownLatch occupy(Person person) {
    CountDownLatch open = new CountDownLatch(1);
    for (int i = 0; i < 4; i++) {
      turns.ask(
          UUID.fromString(person.id()),
          stint -> {
            try {
              return open.await(60, TimeUnit.SECONDS);
            } catch (InterruptedException e) {
              throw new IllegalStateException(e);
            }
          });
    }
    return open;
  }

  @Test
  void aPageThatMustWaitShowsItsFormWithEverythingTyped() throws Exception {
    Browser browser = Browser.of(ada);
    browser.get("/ask/new").tidy();
    Map<String, String> typed =
        Map.of("title", "Why does slate go grey?", "text", "It went grey at once.", "step", "post");
    Map<String, byte[]> photos = Map.of("photo1", Pictures.of(80, 60, "jpeg"));
    CountDownLatch open = occupy(ada);
    try {
      browser.sendFiles("form.talk-form", typed, photos).tidy();
      assertEquals(503, browser.status());
      assertEquals("5", browser.header("Retry-After"));
      assertEquals("Why does slate go grey?", browser.field("title"));
      assertTrue(browser.page().text().contains("Please choose the photos again."));
      given()
          .spec(ada.asks())
          .contentType("application/octet-stream")
          .header("Idempotency-Key", Bodies.key())
          .body(Pictures.of(30, 30, "png"))
          .post("/api/v1/reports/" + Bodies.post(ada, Bodies.report()) + "/photos")
          .then()
          .statusCode(503)
          .header("Retry-After", "5")
          .body("type", equalTo(BUSY))
          .body("detail", containsString("few seconds"));
    } finally {
      open.countDown();
    }
    browser.sendFiles("form.talk-form", typed, photos);
    assertEquals(303, browser.status());
  }
}
