package club.emberwell.api.talk;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.matchesPattern;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.talk.Matching;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@QuarkusTest
class WatchApiTest {
  private static final String PATH = "/api/v1/watches";

  @Inject Matching matching;

  private Person ada;
  private Person ben;

  @BeforeEach
  void join() {
    ada = People.join();
    ben = People.join();
  }

  private static Response post(Person person, String path, Object body) {
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .body(body)
        .post(path);
  }

  private String watch() {
    return post(ada, PATH, Map.of("query", "material=slate"))
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  @Test
  void aSearchIsKeptRenamedAndEnded() {
    Map<String, Object> body = Map.of("query", "?source=diode&q=halo&page=3");
    String id =
        post(ada, PATH, body)
            .then()
            .statusCode(201)
            .header("ETag", matchesPattern("\"\\d+\""))
            .body("query", equalTo("q=halo&source=diode"))
            .body("label", equalTo("“halo”, Diode"))
            .body("mail", equalTo(false))
            .body("feed", nullValue())
            .extract()
            .path("id");
    String path = PATH + "/" + id;
    String version = ada.asks().get(path).header("ETag");
    Map<String, Object> change = Map.of("label", "Halos", "mail", true);
    ada.asks().body(change).put(path).then().statusCode(428);
    ada.asks()
        .header("If-Match", version)
        .body(change)
        .put(path)
        .then()
        .statusCode(200)
        .header("ETag", not(version))
        .body("label", equalTo("Halos"))
        .body("mail", equalTo(true));
    ada.asks().header("If-Match", version).body(change).put(path).then().statusCode(412);
    ada.asks().get(PATH).then().body("items.label", contains("Halos"));
    ada.asks().delete(path).then().statusCode(204);
    ada.asks().delete(path).then().statusCode(204);
    ada.asks().get(path).then().statusCode(404);
    ada.asks().get(PATH).then().body("items", hasSize(0));
  }

  @Test
  void nobodyElseKnowsOfIt() {
    String path = PATH + "/" + watch();
    ben.asks().get(path).then().statusCode(404);
    ben.asks().delete(path).then().statusCode(204);
    ben.asks().put(path + "/feed").then().statusCode(404);
    ben.asks()
        .header("If-Match", "\"1\"")
        .body(Map.of("label", "mine"))
        .put(path)
        .then()
        .statusCode(404);
    ada.asks().get(path).then().statusCode(200);
  }

  @Test
  void aFeedGetsAnAddressThatDiesWithTheNextOne() {
    String path = PATH + "/" + watch() + "/feed";
    String first = ada.asks().put(path).then().statusCode(200).extract().path("feed");
    ada.asks()
        .put(path)
        .then()
        .body("feed", matchesPattern("https?://.+/feeds/[\\w-]{43}\\.atom"))
        .body("feed", not(first));
    ada.asks().delete(path).then().statusCode(200).body("feed", nullValue());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "query|nonsense=1|422", "query|source=maser|422", "query|powerMin=fast|422",
        "query|q=a&q=b|422", "extra|x|400", "memberId|x|400"
      })
  void aFieldAtFaultIsNamed(String field, String value, int status) {
    Map<String, Object> body = new HashMap<>(Map.of("query", "material=slate"));
    body.put(field, value);
    post(ada, PATH, body).then().statusCode(status).body("errors.pointer", contains("/" + field));
    body = new HashMap<>(Map.of("query", "material=slate", "label", "x".repeat(81)));
    post(ada, PATH, body).then().statusCode(422).body("errors.pointer", contains("/label"));
    ada.asks().get(PATH).then().body("items", hasSize(0));
  }

  @Test
  void anAnswerComesToWhoAskedAndIsReadOnce() {
    Map<String, Object> asked = Map.of("title", "A plain question", "text", "Who knows?");
    String question = post(ada, "/api/v1/questions", asked).then().extract().path("id");
    String path = "/api/v1/questions/" + question + "/answers";
    String answer = post(ben, path, Map.of("text", "I do.")).then().extract().path("id");
    JsonPath inbox = found(ada);
    assertEquals(List.of(answer), inbox.getList("items.item.id"));
    assertEquals(List.of("answer"), inbox.getList("items.item.kind"));
    assertEquals(1, inbox.getInt("unread"));
    assertEquals(
        "/ask/" + question + "?answer=" + answer + "#answer-" + answer,
        inbox.getString("items[0].item.path"));
    int id = inbox.getInt("items[0].id");
    read(ben, Map.of("find", id)).then().statusCode(204);
    ada.asks().get("/api/v1/inbox").then().body("unread", equalTo(1));
    read(ada, Map.of("find", id)).then().statusCode(204);
    ada.asks().get("/api/v1/inbox").then().body("unread", equalTo(0));
    read(ada, Map.of("find", id, "upTo", id)).then().statusCode(400);
    read(ada, Map.of()).then().statusCode(400);
    read(ada, Map.of("upTo", "x")).then().statusCode(400);
    given().get("/api/v1/inbox").then().statusCode(401);
  }

  private static Response read(Person person, Object body) {
    return person.asks().body(body).put("/api/v1/inbox/read");
  }

  private JsonPath found(Person person) {
    matching.catchUp();
    return person.asks().get("/api/v1/inbox").jsonPath();
  }
}
