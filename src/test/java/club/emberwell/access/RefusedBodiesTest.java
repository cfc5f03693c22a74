package club.emberwell.access;

import static club.emberwell.access.People.PASSWORD;
import static club.emberwell.access.People.json;
import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.notNullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import io.restassured.http.ContentType;
import java.io.ByteArrayInputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a program sends that is not what an operation takes. */
@QuarkusTest
class RefusedBodiesTest {
  private static final String PROBLEM = "application/problem+json";

  @ParameterizedTest
  @CsvSource({
    "members,handle", "members,email", "members,password",
    "tokens,handle", "tokens,password", "tokens,label"
  })
  void everyFieldRefusesValuesOfOtherTypesAtItsPointer(String where, String field) {
    for (Object wrong : new Object[] {12, 1.5, true, Map.of("a", 1), new int[] {1}}) {
      Map<String, Object> body = new HashMap<>();
      body.put(field, wrong);
      json(body)
          .post("/api/v1/" + where)
          .then()
          .statusCode(400)
          .contentType(PROBLEM)
          .body("errors[0].pointer", equalTo("/" + field));
    }
  }

  @ParameterizedTest
  @CsvSource({"members,handle", "members,email", "members,password", "tokens,label"})
  void everyFieldRefusesWhatIsTooLongOrNoText(String where, String field) {
    for (String wrong : new String[] {"x".repeat(5000), "nul\u0000inside", "half \ud83d pair"}) {
      Map<String, Object> body = new HashMap<>();
      body.put("handle", "some-name");
      body.put("password", PASSWORD);
      body.put("label", "label");
      body.remove(where.equals("members") ? "label" : "email");
      body.put(field, wrong);
      json(body)
          .post("/api/v1/" + where)
          .then()
          .statusCode(422)
          .body("errors.pointer", hasItem("/" + field));
    }
  }

  @Test
  void anUnknownFieldIsRefusedByName() {
    json(Map.of("handle", "some-name", "password", PASSWORD, "role", "owner"))
        .post("/api/v1/members")
        .then()
        .statusCode(400)
        .body("errors[0].pointer", equalTo("/role"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "{",
        "null",
        "[]",
        "\"text\"",
        "12",
        "{\"handle\": \"a\", \"handle\": \"b\"}",
        "{} trailing",
        "{'handle': 'a'}"
      })
  void whatIsNoJsonObjectIsRefused(String body) {
    given()
        .contentType(ContentType.JSON)
        .body(body)
        .post("/api/v1/members")
        .then()
        .statusCode(400)
        .contentType(PROBLEM)
        .body("title", notNullValue())
        .body("detail", not(containsString("club.emberwell")))
        .body("detail", not(containsString("jackson")));
  }

  @Test
  void textThatIsNotUtf8IsRefused() {
    given()
        .contentType("application/json")
        .body(new byte[] {'{', '"', (byte) 0xC3, (byte) 0x28, '"', ':', '1', '}'})
        .post("/api/v1/members")
        .then()
        .statusCode(400)
        .contentType(PROBLEM);
  }

  @Test
  void aBodyThatIsTooBigAnotherFormatAMethodAndAnAddressNobodyServesAreProblems() {
    json(Map.of("handle", "x".repeat(300_000)))
        .post("/api/v1/members")
        .then()
        .statusCode(413)
        .contentType(PROBLEM);
    given()
        .contentType("text/plain")
        .body("x")
        .post("/api/v1/members")
        .then()
        .statusCode(415)
        .contentType(PROBLEM);
    given().delete("/api/v1/members").then().statusCode(405).contentType(PROBLEM);
    given().get("/api/v1/nothing-here").then().statusCode(404).contentType(PROBLEM);
    given().get("/api/v1/members/not-a-uuid").then().statusCode(404).contentType(PROBLEM);
    given().get("/api/v1/me").then().statusCode(401).contentType(PROBLEM);
  }

  @Test
  void aBodyThatDoesNotSayItsLengthIsCounted() throws Exception {
    URI there = URI.create(RestAssured.baseURI + ":" + RestAssured.port + "/api/v1/members");
    for (int size : new int[] {300_000, 13_000_000}) {
      byte[] body = ("{\"handle\": \"" + "x".repeat(size) + "\"}").getBytes(StandardCharsets.UTF_8);
      HttpRequest chunked =
          HttpRequest.newBuilder(there)
              .header("Content-Type", "application/json")
              .POST(BodyPublishers.ofInputStream(() -> new ByteArrayInputStream(body)))
              .build();
      HttpResponse<String> answer =
          HttpClient.newHttpClient().send(chunked, BodyHandlers.ofString());
      assertEquals(413, answer.statusCode());
    }
  }
}
