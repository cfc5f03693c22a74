package club.emberwell.matrix;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsInAnyOrder;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.not;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.matrix.Crew.Somebody;
import club.emberwell.matrix.Routes.Route;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every address of the API with an owner's token that lacks a scope: no role stands in the way. */
@QuarkusTest
class TokenScopesTest {
  /** They compute and store nothing. */
  private static final Set<Route> READING_POSTS =
      Set.of(
          new Route("POST", "/api/v1/dose"),
          new Route("POST", "/api/v1/grids/plan"),
          new Route("POST", "/api/v1/lots/order"),
          new Route("POST", "/api/v1/fixtures/{id}/batch"),
          new Route("POST", "/api/v1/desk/undos/preview"));

  @Inject Crew crew;

  private static List<Route> api(boolean reading) {
    return Routes.all().stream()
        .filter(Route::api)
        .filter(route -> reading == (route.method().equals("GET") || READING_POSTS.contains(route)))
        .toList();
  }

  private static Response ask(Route route, Somebody who) {
    RequestSpecification request =
        given()
            .urlEncodingEnabled(false)
            .header("Authorization", "Bearer " + who.token())
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .header("If-Match", "\"999999\"");
    if (route.path().equals("/api/v1/bench/copy") && route.method().equals("POST")) {
      request.contentType("application/zip").body(new byte[] {1});
    } else if (route.path().matches(".*(/photos|/(lots|fixtures)/\\{id}/photo)")) {
      request.contentType("image/png").body(new byte[] {1});
    } else if (Set.of("POST", "PUT", "PATCH").contains(route.method())) {
      request.contentType(ContentType.JSON).body("{}");
    }
    String nobodys = UUID.randomUUID().toString();
    return request.request(route.method(), route.path().replaceAll("\\{\\w+}", nobodys));
  }

  private static boolean lacks(Response answer, String scope) {
    return answer.statusCode() == 403
        && answer.contentType().startsWith("application/problem+json")
        && answer.path("detail").toString().contains("lacks the scope " + scope)
        && String.valueOf(answer.header("WWW-Authenticate")).contains("scope=\"" + scope + "\"");
  }

  @Test
  void aTokenForReadingGets403OnEveryRouteThatWrites() {
    Somebody reader = crew.person("owner", "active", "read moderate");
    List<String> open = new ArrayList<>();
    List<Route> routes = api(false);
    assertTrue(routes.size() > 60, "the list of routes is short: " + routes.size());
    for (Route route : routes) {
      Response answer = ask(route, reader);
      if (!lacks(answer, "write")) {
        open.add(route + " " + answer.statusCode());
      }
    }
    assertEquals(List.of(), open);
  }

  @Test
  void aTokenForReadingIsNotHeldUpWhereNothingIsWritten() {
    Somebody reader = crew.person("owner", "active", "read moderate");
    List<String> held = new ArrayList<>();
    for (Route route : api(true)) {
      Response answer = ask(route, reader);
      if (answer.statusCode() == 403 || answer.statusCode() == 401) {
        held.add(route + " " + answer.statusCode());
      }
    }
    assertEquals(List.of(), held);
  }

  @Test
  void aTokenForWritingReadsNothingAndOneForNothingDoesNothing() {
    Somebody writer = crew.person("owner", "active", "write moderate");
    Somebody useless = crew.person("owner", "active", "moderate");
    List<String> open = new ArrayList<>();
    for (Route route : api(true)) {
      if (!lacks(ask(route, writer), "read") || !lacks(ask(route, useless), "read")) {
        open.add(route.toString());
      }
    }
    for (Route route : api(false)) {
      if (!lacks(ask(route, useless), "write")) {
        open.add(route.toString());
      }
    }
    assertEquals(List.of(), open);
  }

  @Test
  void withoutItsScopeAnOwnersTokenIsAMembers() {
    Somebody member = crew.person("member", "active", "read write");
    Somebody owner = crew.person("owner", "active", "read write");
    List<String> more = new ArrayList<>();
    int closed = 0;
    for (Route route : Routes.all().stream().filter(Route::api).toList()) {
      Response asMember = ask(route, member);
      boolean byRole = asMember.statusCode() == 403 && asMember.asString().contains("Your role");
      closed += byRole ? 1 : 0;
      if (byRole && !lacks(ask(route, owner), "moderate")) {
        more.add(route.toString());
      }
    }
    assertTrue(closed > 50, "routes of moderators and owners: " + closed);
    assertEquals(List.of(), more);
    // where a moderator may do more than a member on the same address
    String report = new Things(crew, member).get("report");
    for (String scopes : List.of("read write", "read write moderate")) {
      given()
          .auth()
          .oauth2(crew.person("moderator", "active", scopes).token())
          .contentType(ContentType.JSON)
          .header("If-Match", "\"999999\"")
          .body("{}")
          .put("/api/v1/reports/" + report)
          .then()
          .statusCode(scopes.endsWith("moderate") ? not(403) : equalTo(403));
    }
  }

  private static Map<String, Object> entry(Person person, Object scopes) {
    Map<String, Object> entry = new HashMap<>();
    entry.put("handle", person.handle());
    entry.put("password", People.PASSWORD);
    entry.put("label", "a script");
    if (scopes != null) {
      entry.put("scopes", scopes);
    }
    return entry;
  }

  @Test
  void theScopesAreChosenWhenATokenIsMadeAndToldInTheList() {
    Person person = People.join();
    String token =
        People.json(entry(person, List.of("read")))
            .post("/api/v1/tokens")
            .then()
            .statusCode(201)
            .body("scopes", contains("read"))
            .extract()
            .path("token");
    given()
        .auth()
        .oauth2(token)
        .get("/api/v1/tokens")
        .then()
        .statusCode(200)
        .body("items.scopes", containsInAnyOrder(List.of("read"), List.of("read", "write")));
    given()
        .auth()
        .oauth2(token)
        .contentType(ContentType.JSON)
        .body(entry(person, List.of("read", "write")))
        .post("/api/v1/tokens")
        .then()
        .statusCode(403)
        .body("detail", containsString("lacks the scope write; it has read."));
    People.json(entry(person, null))
        .post("/api/v1/tokens")
        .then()
        .statusCode(201)
        .body("scopes", equalTo(List.of("read", "write")));
  }

  static List<List<String>> wrong() {
    return List.of(List.of(), List.of("admin"), List.of("moderate"), List.of("READ"));
  }

  @ParameterizedTest
  @MethodSource("wrong")
  void scopesThatThereAreNotAreRefusedAtTheirField(List<String> scopes) {
    People.json(entry(People.join(), scopes))
        .post("/api/v1/tokens")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/scopes"));
  }

  /** What takes an account over needs the password, whatever the token may. */
  @Test
  void noTokenAloneTakesAnAccountOver() {
    Person person = People.join();
    for (Map.Entry<String, Map<String, String>> each :
        Map.of(
                "/api/v1/me/password",
                Map.of("current", "a guess of mine", "password", "quite another 77 phrase"),
                "/api/v1/me/email",
                Map.of("email", "thief@mail.example"),
                "/api/v1/me/erasure",
                Map.of("choice", "remove"),
                "/api/v1/tokens",
                Map.of("handle", person.handle(), "label", "one more"))
            .entrySet()) {
      person.asks().body(each.getValue()).post(each.getKey()).then().statusCode(422);
    }
    person.asks().get("/api/v1/me").then().statusCode(200).body("email", equalTo(null));
  }
}
