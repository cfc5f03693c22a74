package club.emberwell.web.club;

import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.exchange.example.ExampleWork;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The invented club inside a real one: it comes whole, says what it is, and goes whole. */
@QuarkusTest
class ExampleClubTest {
  private static final String EXAMPLE = "/desk/club/example";
  private static final String API = "/api/v1/club/example";

  @Inject Staff staff;
  @Inject ExampleWork work;

  @Test
  void anOwnerLoadsTheExampleLooksAtItAndRemovesItWhole() {
    Person owner = staff.person(Role.OWNER);
    Browser browser = Browser.of(owner);
    String steps = browser.get("/desk/club/first-steps").tidy().page().select("main").text();
    // another test may have done the last of them
    assertTrue(steps.matches(".*First steps for your club (\\d of 5|All) done\\. .*"), steps);
    browser.get(EXAMPLE).tidy().send("main form", Map.of());
    assertEquals(303, browser.status());
    assertTrue(browser.follow().tidy().page().select("main").text().contains("Loading"));
    owner.asks().put(API).then().statusCode(200).body("state", equalTo("loading"));
    assertTrue(work.step());
    assertFalse(work.step(), "nothing is left to do");
    owner
        .asks()
        .get(API)
        .then()
        .body("state", equalTo("there"))
        .body("members", equalTo(15))
        .body("reports", greaterThan(90))
        .body("removal.answersKept", equalTo(0));
    everyInventedNameSaysSo(owner);
    nobodySignsInAsOne();
    String question = realAnswerToAnInventedQuestion(owner);
    String repeat = realRepeatOfAnInventedReport(owner);
    browser.get(EXAMPLE + "/remove").tidy();
    assertTrue(
        browser.page().select("main").text().contains("1 answer to invented questions: kept"));
    assertTrue(browser.page().select("main").text().contains("1 repeat of invented results: kept"));
    browser.send("main form", Map.of());
    assertTrue(browser.follow().page().select("main").text().contains("Removing"));
    assertTrue(work.step());
    owner.asks().get(API).then().body("state", equalTo("none")).body("members", equalTo(0));
    await().atMost(Duration.ofSeconds(20)).until(() -> inventedFound(owner).isEmpty());
    owner
        .asks()
        .get("/api/v1/questions/" + question)
        .then()
        .statusCode(200)
        .body("answers.size()", equalTo(1));
    owner.asks().get("/api/v1/reports/" + repeat).then().statusCode(200);
    assertTrue(browser.get("/").page().select(".invented-strip").isEmpty());
    owner.asks().delete(API).then().statusCode(200).body("state", equalTo("none"));
    itComesASecondTimeAndIsStopped(owner);
  }

  private void itComesASecondTimeAndIsStopped(Person owner) {
    owner.asks().put(API).then().statusCode(200).body("state", equalTo("loading"));
    owner.asks().delete(API).then().statusCode(200).body("state", equalTo("removing"));
    owner
        .asks()
        .put(API)
        .then()
        .statusCode(403)
        .body("detail", equalTo("The example club is being removed. Try again in a minute."));
    assertTrue(work.step());
    owner.asks().get(API).then().body("state", equalTo("none"));
  }

  private void everyInventedNameSaysSo(Person owner) {
    await().atMost(Duration.ofSeconds(20)).until(() -> !inventedFound(owner).isEmpty());
    Browser stranger = new Browser().get("/");
    assertTrue(stranger.tidy().page().select(".invented-strip").text().contains("are invented"));
  }

  /** Authors of found reports whose name says that they are invented. */
  private static List<String> inventedFound(Person owner) {
    List<String> found =
        owner
            .asks()
            .get("/api/v1/reports?size=50&member=ashgrove-invented")
            .then()
            .statusCode(200)
            .extract()
            .path("hits.member.handle");
    return found.stream().filter(name -> name.endsWith("-invented")).toList();
  }

  private static void nobodySignsInAsOne() {
    for (String password : List.of("ember and slate 26", "ashgrove-invented")) {
      People.json(Map.of("handle", "ashgrove-invented", "password", password, "label", "x"))
          .post("/api/v1/tokens")
          .then()
          .statusCode(401);
    }
  }

  private static String realAnswerToAnInventedQuestion(Person owner) {
    String question = inventedQuestion(owner);
    owner
        .asks()
        .header("Idempotency-Key", People.freshHandle())
        .body(Map.of("text", "Wipe it with alcohol while it is warm."))
        .post("/api/v1/questions/" + question + "/answers")
        .then()
        .statusCode(201);
    return question;
  }

  /** Other tests ask too, later and more than a page holds: the search follows no clock here. */
  private static String inventedQuestion(Person owner) {
    String cursor = "";
    while (cursor != null) {
      JsonPath page =
          owner
              .asks()
              .queryParam("cursor", cursor)
              .get("/api/v1/questions?size=50")
              .then()
              .statusCode(200)
              .extract()
              .jsonPath();
      String id = page.getString("items.find { it.member.handle.endsWith('-invented') }?.id");
      if (id != null) {
        return id;
      }
      cursor = page.getString("next");
    }
    return fail("no invented question");
  }

  private static String realRepeatOfAnInventedReport(Person owner) {
    String report =
        owner
            .asks()
            .get("/api/v1/reports?member=ashgrove-invented")
            .then()
            .extract()
            .path("hits[0].id");
    return owner
        .asks()
        .header("Idempotency-Key", People.freshHandle())
        .body(
            Map.of(
                "laser",
                Map.of(
                    "source",
                    "co2",
                    "wavelength",
                    "10.6 um",
                    "ratedPower",
                    "60 W",
                    "motion",
                    "gantry"),
                "effect",
                "right"))
        .post("/api/v1/reports/" + report + "/repeats")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }
}
