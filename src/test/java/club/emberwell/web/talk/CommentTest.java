package club.emberwell.web.talk;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.talk.Matching;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.TalkService;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

@QuarkusTest
class CommentTest {
  private static final String FORM = "form.comment-form";
  private static final String REPORTS = "/api/v1/reports";
  private static final String COUNTED = "hits[0].commentCount";
  private static final String COMMENTS = "/api/v1/comments/";

  @Inject Members members;
  @Inject Staff staff;
  @Inject TalkService talk;
  @Inject EntryLife life;
  @Inject Matching matching;

  private Person ada;
  private Person ben;
  private String report;

  @BeforeEach
  void aReport() {
    ada = People.join();
    ben = People.join();
    report = post(ada, REPORTS, body("leather")).statusCode(201).extract().path("id");
  }

  private static Map<String, Object> body(String material) {
    Map<String, Object> laser =
        Map.of("source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
    return Map.of(
        "laser",
        laser,
        "material",
        material,
        "process",
        "surface-engraving",
        "settings",
        Map.of("power", "40 %", "speed", "400 mm/s", "lineSpacing", "0.1 mm"),
        "effect",
        "right");
  }

  private static ValidatableResponse post(Person person, String path, Object body) {
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(path)
        .then();
  }

  private String comment(Person by, String text) {
    return post(by, REPORTS + "/" + report + "/comments", Map.of("text", text))
        .statusCode(201)
        .extract()
        .path("id");
  }

  private Actor actor(Person person) {
    return members.byId(UUID.fromString(person.id())).orElseThrow().actor();
  }

  @Test
  void aCommentIsWrittenUnderTheReportAndReadAsItWasTyped() {
    Browser page = Browser.of(ben);
    page.get("/reports/" + report).tidy();
    assertTrue(page.page().select("#comments").text().contains("No comment yet"));
    page.send(FORM, Map.of("text", " "));
    assertEquals(422, page.status());
    assertFalse(page.tidy().page().select("#at-text .field-error").isEmpty());
    page.send(FORM, Map.of("text", "x".repeat(TalkLimits.COMMENT + 1)));
    assertEquals(422, page.status());
    assertEquals(TalkLimits.COMMENT + 1, page.tidy().field("text").length());
    page.send(FORM, Map.of("text", "Which *side* was up?\nMine <b>curls</b>."));
    assertEquals(303, page.status());
    page.follow().tidy();
    assertEquals("1 comment", page.page().select("#comments").text());
    String said = page.page().select("article[id^=comment-] .member-text").html();
    assertTrue(said.contains("Which *side* was up?"), said);
    assertTrue(said.contains("<br>") && said.contains("&lt;b&gt;curls"), said);
  }

  @Test
  void wherePeopleFindAReportItsLiveCommentsAreCounted() {
    List<String> lists = List.of("/?member=" + ada.handle(), "/members/" + ada.handle(), "/bench");
    Browser page = Browser.of(ada);
    for (String list : lists) {
      assertFalse(page.get(list).page().select(".hit").text().contains("comment"), list);
    }
    String found = REPORTS + "?member=" + ada.handle();
    String tag = given().get(found).then().body(COUNTED, equalTo(0)).extract().header("ETag");
    comment(ben, "Which lens?");
    String second = comment(ada, "The long one.");
    await()
        .atMost(Duration.ofSeconds(20))
        .untilAsserted(
            () -> given().header("If-None-Match", tag).get(found).then().body(COUNTED, equalTo(2)));
    for (String list : lists) {
      String hit = page.get(list).tidy().page().select(".hit").text();
      assertTrue(hit.contains("· 2 comments"), list + ": " + hit);
    }
    ada.asks().get(REPORTS + "/" + report).then().body("commentCount", equalTo(2));
    EntryRef ref = new EntryRef(EntryKind.COMMENT, UUID.fromString(second));
    life.decide(actor(staff.person(Role.MODERATOR)), ref, Decision.HOLD, "Let us check.");
    given().get(found).then().body(COUNTED, equalTo(1));
    for (String list : lists) {
      String hit = page.get(list).page().select(".hit").text();
      assertTrue(hit.contains("· 1 comment") && !hit.contains("comments"), list + ": " + hit);
    }
  }

  @Test
  void countingCommentsTakesNoStatementForEachReport() {
    String search = "/?member=" + ada.handle();
    Browser page = Browser.of(ada);
    comment(ben, "Which lens?");
    int one = StatementCount.ofRequests(() -> page.get(search)).size();
    for (String material : List.of("slate", "maple", "birch")) {
      report = post(ada, REPORTS, body(material)).statusCode(201).extract().path("id");
      page.get(search);
      comment(ben, "Which lens?");
    }
    int four = StatementCount.ofRequests(() -> page.get(search)).size();
    assertEquals(4, page.page().select(".hit td:contains(1 comment)").size());
    assertTrue(four <= one, four + " for four, " + one + " for one");
  }

  @Test
  void aCommentHasTheLifeOfEveryEntry() {
    String id = comment(ben, "Which lens?");
    ben.asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("text", "Which lens, please?", "reason", "politer"))
        .put(COMMENTS + id)
        .then()
        .statusCode(200)
        .body("version", equalTo(2), "kind", equalTo("comment"), "report", equalTo(report));
    ada.asks().get(COMMENTS + id + "/history").then().body("items", hasSize(2));
    ada.asks()
        .header("If-Match", "\"2\"")
        .body(Map.of("text", "x"))
        .put(COMMENTS + id)
        .then()
        .statusCode(403);
    Browser moderator = Browser.of(staff.person(Role.MODERATOR));
    Browser reader = Browser.of(ada);
    reader.get("/flags/comment/" + id).tidy();
    reader.send("main form", Map.of("reason", "off-topic"));
    assertEquals(303, reader.status());
    moderator.get("/desk/items/comment/" + id).tidy();
    assertTrue(moderator.page().text().contains("Which lens, please?"));
    EntryRef ref = new EntryRef(EntryKind.COMMENT, UUID.fromString(id));
    Actor judge = actor(staff.person(Role.MODERATOR));
    life.decide(judge, ref, Decision.HOLD, "Let us check.");
    ada.asks().get(COMMENTS + id).then().statusCode(404);
    ada.asks().get(REPORTS + "/" + report + "/comments").then().body("items", hasSize(0));
    String mine = Browser.of(ben).get("/reports/" + report).page().text();
    assertTrue(mine.contains("This comment is held by a moderator"), mine);
    life.decide(judge, ref, Decision.RESTORE, "All is well.");
    reader.get("/talk/" + id + "/history").tidy();
    assertTrue(reader.page().text().contains("Back to the comment"));
    Browser.of(ben).get("/talk/" + id + "/edit").tidy().send("form.talk-form", Map.of("text", "?"));
    ben.asks().delete(COMMENTS + id).then().statusCode(204);
    ada.asks().get(COMMENTS + id).then().statusCode(410);
    ada.asks().get(REPORTS + "/" + report + "/comments").then().body("items", hasSize(0));
  }

  @Test
  void theApiSaysAtWhichFieldItIsAndWhatIsThere() {
    post(ben, REPORTS + "/" + report + "/comments", Map.of("text", ""))
        .statusCode(422)
        .body("errors.pointer", hasItem("/text"));
    post(ben, REPORTS + "/" + report + "/comments", Map.of("text", "x", "title", "y"))
        .statusCode(400);
    post(ben, REPORTS + "/" + UUID.randomUUID() + "/comments", Map.of("text", "x")).statusCode(404);
    comment(ben, "one");
    comment(ada, "two");
    String next =
        ada.asks()
            .get(REPORTS + "/" + report + "/comments?size=1")
            .then()
            .body("items.text", equalTo(List.of("one")))
            .extract()
            .path("next");
    ada.asks()
        .get(REPORTS + "/" + report + "/comments?size=1&cursor=" + next)
        .then()
        .body("items.text", equalTo(List.of("two")));
    ada.asks().delete(REPORTS + "/" + report).then().statusCode(204);
    post(ben, REPORTS + "/" + report + "/comments", Map.of("text", "late")).statusCode(410);
    ben.asks().get(REPORTS + "/" + report + "/comments").then().statusCode(410);
  }

  @Test
  void itsAuthorIsToldAndWhoeverCommentedBefore() {
    Person cleo = People.join();
    String first = comment(ben, "Which lens?");
    comment(ada, "The short one.");
    String third = comment(cleo, "Mine too.");
    matching.catchUp();
    ada.asks().get("/api/v1/inbox").then().body("items.item.id", equalTo(List.of(third, first)));
    ben.asks().get("/api/v1/inbox").then().body("items", hasSize(2));
    cleo.asks().get("/api/v1/inbox").then().body("items", hasSize(0));
    Browser inbox = Browser.of(ada);
    inbox.get("/inbox").tidy();
    String link = inbox.page().select(".hits a").first().attr("href");
    assertEquals("/reports/" + report + "?comment=" + third + "#comment-" + third, link);
    assertNotNull(inbox.get(link).tidy().page().getElementById("comment-" + third));
    assertNull(inbox.get("/inbox").page().selectFirst(".unread"));
  }

  @Test
  void commentsTakeTheSameStatementsWhateverTheirNumber() {
    UUID id = UUID.fromString(report);
    comment(ben, "one");
    int few = StatementCount.of(() -> talk.comments(actor(ben), id, Part.FIRST)).size();
    for (int i = 0; i < 8; i++) {
      comment(ben, "more " + i);
    }
    assertEquals(few, StatementCount.of(() -> talk.comments(actor(ben), id, Part.FIRST)).size());
    String page = Browser.of(ada).get("/reports/" + report).page().select("#comments").text();
    assertEquals("9 comments", page);
    ben.asks()
        .get(REPORTS + "/" + report + "/comments")
        .then()
        .body("items[8].text", containsString("more 7"));
  }
}
