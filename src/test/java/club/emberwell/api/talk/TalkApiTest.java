package club.emberwell.api.talk;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.hamcrest.Matchers.startsWith;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.member.Role;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class TalkApiTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** Where the raw value goes: a mapper would mend what should arrive broken. */
  private static final String PLACE = "\"@@\"";

  private static final String QUESTIONS = "/api/v1/questions";
  private static final String NOTICES = "/api/v1/notices";

  @Inject Staff staff;

  private Person ada;
  private Person ben;

  @BeforeEach
  void join() {
    ada = People.join();
    ben = People.join();
  }

  private static Map<String, Object> question() {
    return Map.of(
        "title", "Pale marks on slate",
        "text", "They fade after **oil**. <script>alert(1)</script>",
        "ties", Map.of("material", "slate", "source", "co2", "controllerVersion", "4.2"));
  }

  private static Response post(Person person, String path, Object body) {
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(path);
  }

  private String ask() {
    return post(ada, QUESTIONS, question()).then().statusCode(201).extract().path("id");
  }

  private static String answer(Person person, String question, String text) {
    return post(person, QUESTIONS + "/" + question + "/answers", Map.of("text", text))
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private static Response accept(Person person, String question, String version, String answer) {
    return person
        .asks()
        .header("If-Match", version)
        .body(answer == null ? "{\"answer\": null}" : "{\"answer\": \"" + answer + "\"}")
        .put(QUESTIONS + "/" + question + "/accepted");
  }

  @Test
  void aQuestionIsAskedAnsweredAndSettled() {
    String location =
        post(ada, QUESTIONS, question())
            .then()
            .statusCode(201)
            .header("ETag", "\"1\"")
            .body("kind", equalTo("question"))
            .body("member.handle", equalTo(ada.handle()))
            .body("ties.material", equalTo("slate"))
            .body("ties.source", equalTo("co2"))
            .body("ties.controllerVersion", equalTo("4.2"))
            .body("html", containsString("<strong>oil</strong>"))
            .body("html", not(containsString("<script")))
            .body("answerCount", equalTo(0))
            .extract()
            .header("Location");
    String id = location.substring(location.lastIndexOf('/') + 1);
    String first = answer(ben, id, "Slow down.");
    String second = answer(ben, id, "Paint it first.");
    given()
        .get(QUESTIONS + "/" + id)
        .then()
        .statusCode(200)
        .header("ETag", startsWith("\"1-"))
        .body("answerCount", equalTo(2))
        .body("answers.items.id", contains(first, second))
        .body("answers.next", nullValue())
        .body("accepted", nullValue());
    accept(ada, id, "\"1\"", second)
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"")
        .body("accepted", equalTo(second));
    given()
        .get(QUESTIONS + "/" + id)
        .then()
        .body("answers.items.id", contains(second, first))
        .body("answers.items[0].ties", nullValue());
    accept(ada, id, "\"1\"", first).then().statusCode(412).header("ETag", "\"2\"");
    accept(ada, id, "\"2\"", null).then().statusCode(200).body("accepted", nullValue());
  }

  @Test
  void onlyWhoAskedSaysWhatHelped() {
    String id = ask();
    String answer = answer(ben, id, "Like this.");
    accept(ben, id, "\"1\"", answer).then().statusCode(403);
    accept(staff.person(Role.MODERATOR), id, "\"1\"", answer).then().statusCode(403);
    accept(ada, id, "\"1\"", UUID.randomUUID().toString()).then().statusCode(404);
    ada.asks()
        .body(Map.of("answer", answer))
        .put(QUESTIONS + "/" + id + "/accepted")
        .then()
        .statusCode(428);
    ada.asks()
        .header("If-Match", "\"1\"")
        .put(QUESTIONS + "/" + id + "/accepted")
        .then()
        .statusCode(400);
  }

  @Test
  void anEditKeepsWhatStoodBeforeAndSaysWhatDiffers() {
    String path = QUESTIONS + "/" + ask();
    Map<String, Object> changed =
        Map.of("title", "Pale marks on slate", "text", "Only after oil.", "reason", "clearer");
    ada.asks().body(changed).put(path).then().statusCode(428);
    ben.asks().header("If-Match", "\"1\"").body(changed).put(path).then().statusCode(403);
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(changed)
        .put(path)
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"")
        .body("text", equalTo("Only after oil."));
    ada.asks()
        .header("If-Match", "\"1\"")
        .body(changed)
        .put(path)
        .then()
        .statusCode(412)
        .header("ETag", "\"2\"");
    given()
        .get(path + "/history")
        .then()
        .body("items.version", contains(2, 1))
        .body("items[0].reason", equalTo("clearer"))
        .body("items[0].changes.pointer", hasItem("/ties/material"))
        .body("items[0].lines.change", contains("gone", "new"))
        .body("items[1].lines", hasSize(0));
  }

  @Test
  void whatIsWithdrawnIsGoneForOthers() {
    String path = NOTICES + "/" + post(ada, NOTICES, question()).then().extract().path("id");
    ben.asks().delete(path).then().statusCode(403);
    ada.asks().header("If-Match", "\"7\"").delete(path).then().statusCode(412);
    ada.asks().delete(path).then().statusCode(204);
    ada.asks().delete(path).then().statusCode(204);
    given().get(path).then().statusCode(410);
    ada.asks().get(path).then().statusCode(200).body("state", equalTo("withdrawn"));
  }

  @Test
  void anAddressOfAnotherKindLeadsNowhere() {
    String id = ask();
    given().get(NOTICES + "/" + id).then().statusCode(404);
    given().get("/api/v1/answers/" + id).then().statusCode(404);
    ada.asks().delete(NOTICES + "/" + id).then().statusCode(404);
    String notice = post(ada, NOTICES, question()).then().extract().path("id");
    given().get(QUESTIONS + "/" + notice).then().statusCode(404);
    post(ben, QUESTIONS + "/" + notice + "/answers", Map.of("text", "hm")).then().statusCode(404);
    accept(ada, notice, "\"1\"", null).then().statusCode(404);
  }

  @Test
  void anAnswerIsReadChangedAndWithdrawnByItself() {
    String question = ask();
    String id = answer(ben, question, "First try.");
    String path = "/api/v1/answers/" + id;
    ben.asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("text", "Second try."))
        .put(path)
        .then()
        .statusCode(200)
        .body("question", equalTo(question));
    given().get(path + "/history").then().body("items", hasSize(2));
    ben.asks().delete(path).then().statusCode(204);
    given().get(QUESTIONS + "/" + question).then().body("answerCount", equalTo(0));
    post(ben, QUESTIONS + "/" + question + "/answers", question())
        .then()
        .statusCode(422)
        .body("errors.pointer", contains("/title", "/ties"));
  }

  @Test
  void questionsAreListedAndFoundByTheirWords() {
    String word = "w" + Long.toString(System.nanoTime(), 36);
    Map<String, Object> own = Map.of("title", "About the " + word, "text", "Who knows?");
    String id = post(ada, QUESTIONS, own).then().extract().path("id");
    given().get(QUESTIONS).then().body("items[0].id", equalTo(id));
    given()
        .queryParam("q", word)
        .get(QUESTIONS)
        .then()
        .body("items.id", contains(id))
        .body("next", nullValue());
    given().queryParam("q", word).get(NOTICES).then().body("items", hasSize(0));
    unanswered(word).body("items.id", contains(id));
    answer(ben, id, "I do.");
    unanswered(null).body("items.id", not(hasItem(id)));
    unanswered(word).body("items", hasSize(0));
    given().queryParam("q", word).get(QUESTIONS).then().body("items.id", contains(id));
    ada.asks().delete(QUESTIONS + "/" + id).then().statusCode(204);
    given().queryParam("q", word).get(QUESTIONS).then().body("items", hasSize(0));
  }

  private static ValidatableResponse unanswered(String text) {
    RequestSpecification asked = given().queryParam("unanswered", true);
    return (text == null ? asked : asked.queryParam("q", text)).get(QUESTIONS).then();
  }

  @Test
  void theLastAnswerIsReadOnItsPage() {
    String question = ask();
    String last = answer(ben, question, "The first.");
    for (int i = 0; i < 30; i++) {
      last = answer(ben, question, "Another " + i);
    }
    String path = QUESTIONS + "/" + question;
    given().get(path).then().body("answers.items.id", not(hasItem(last)));
    given().queryParam("answer", last).get(path).then().body("answers.items.id", contains(last));
    given()
        .queryParam("answer", question)
        .get(path)
        .then()
        .body("answers.items.id", not(hasItem(last)));
  }

  @Test
  void theSameKeyAsksOnce() {
    String key = UUID.randomUUID().toString();
    String first = keyed(key, question()).then().statusCode(201).extract().path("id");
    assertEquals(first, keyed(key, question()).then().statusCode(201).extract().path("id"));
    Map<String, Object> other = Map.of("title", "Another question", "text", "x");
    keyed(key, other).then().statusCode(422);
    ada.asks().body(question()).post(QUESTIONS).then().statusCode(400);
  }

  private Response keyed(String key, Object body) {
    return ada.asks().header("Idempotency-Key", key).body(body).post(QUESTIONS);
  }

  @Test
  void anIdMadeByTheClientIsKept() {
    String id = UUID.randomUUID().toString();
    Map<String, Object> own = Map.of("id", id, "title", "With its own id", "text", "x");
    post(ada, QUESTIONS, own).then().statusCode(201).body("id", equalTo(id));
    post(ben, QUESTIONS, own).then().statusCode(422).body("errors.pointer", contains("/id"));
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvFileSource(
      resources = "/talk/bad-fields.csv",
      delimiter = '|',
      quoteCharacter = '`',
      numLinesToSkip = 1,
      maxCharsPerColumn = 20_000)
  void aFieldAtFaultIsNamed(String field, String value, int status, String pointer)
      throws Exception {
    ObjectNode body = JSON.valueToTree(question());
    String[] names = field.substring(1).split("/");
    ObjectNode at = names.length == 1 ? body : body.withObject("/" + names[0]);
    at.put(names[names.length - 1], "@@");
    String text =
        JSON.writeValueAsString(body)
            .replace(PLACE, value.replace("LONG", "x".repeat(200)).replace("VAST", long10001()));
    for (String path : List.of(QUESTIONS, NOTICES)) {
      String newest = given().get(path).then().extract().path("items[0].id");
      post(ada, path, text)
          .then()
          .statusCode(status)
          .contentType("application/problem+json")
          .body("errors.pointer", contains(pointer == null ? field : pointer));
      given().get(path).then().body("items[0].id", equalTo(newest));
    }
  }

  private static String long10001() {
    return "x".repeat(10_001);
  }

  @Test
  void strangersReadAndWriteNothing() {
    String id = ask();
    Map<String, Object> body = question();
    for (String path :
        List.of(QUESTIONS, NOTICES, QUESTIONS + "/" + id + "/answers", "/api/v1/watches")) {
      People.json(body).header("Idempotency-Key", "k").post(path).then().statusCode(401);
    }
    for (String path : List.of(QUESTIONS + "/" + id, NOTICES + "/" + id, "/api/v1/answers/" + id)) {
      People.json(body).header("If-Match", "\"1\"").put(path).then().statusCode(401);
      given().delete(path).then().statusCode(401);
    }
    given().get("/api/v1/watches").then().statusCode(401);
    given().get("/api/v1/inbox").then().statusCode(401);
    People.json(Map.of("upTo", 1)).put("/api/v1/inbox/read").then().statusCode(401);
    given().get(QUESTIONS + "/" + id).then().statusCode(200);
  }

  @Test
  void aModeratorMayMendWhatAMemberWrote() {
    String id = ask();
    Person moderator = staff.person(Role.MODERATOR);
    moderator
        .asks()
        .header("If-Match", "\"1\"")
        .body(question())
        .put(QUESTIONS + "/" + id)
        .then()
        .statusCode(200);
    moderator.asks().delete(QUESTIONS + "/" + id).then().statusCode(403);
  }

  @ParameterizedTest
  @ValueSource(strings = {"/api/v1/questions/x", "/api/v1/notices/x"})
  void anAddressThatMeansNothingIsNotFound(String path) {
    given().get(path).then().statusCode(404);
  }
}
