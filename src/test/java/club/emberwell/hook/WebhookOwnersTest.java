package club.emberwell.hook;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.web.frame.Browser;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.net.InetAddress;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** How owners add and change webhooks, and where none may lead. */
@QuarkusTest
class WebhookOwnersTest extends ToldClub {
  @Test
  void whatIsInsideAPrivateNetworkIsRefusedWhenAddedAndAgainWhenSent() throws IOException {
    hosts.say("router.test", InetAddress.getByName("192.168.1.1"));
    for (String url : List.of("https://router.test/", "http://router.test:8080/admin")) {
      given()
          .spec(owner.asks())
          .body(Map.of("label", "Router", "url", url, "events", List.of(RESULTS)))
          .post("/api/v1/webhooks")
          .then()
          .statusCode(422)
          .body("errors[0].pointer", equalTo("/url"))
          .body("errors[0].detail", containsString("private network"));
    }
    hosts.say("moves.test", InetAddress.getByName("8.8.8.8"));
    String url = "https://moves.test:" + receiver.port() + "/";
    String hook =
        given()
            .spec(owner.asks())
            .body(Map.of("label", "Moves", "url", url, "events", List.of(RESULTS)))
            .post("/api/v1/webhooks")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    hosts.say("moves.test", InetAddress.getLoopbackAddress());
    cast.report(member);
    tell();
    assertEquals(0, receiver.received().size());
    owner
        .asks()
        .get("/api/v1/webhooks/" + hook + "/deliveries")
        .then()
        .body("items[0].error", containsString("private network"));
  }

  @Test
  void neitherATokenAloneNorASessionOfLongAgoGivesANewSecret() {
    String path = "/api/v1/webhooks/" + add(RESULTS);
    String before = owner.asks().get(path).header("ETag");
    owner
        .asks()
        .body(Map.of())
        .post(path + "/secret")
        .then()
        .statusCode(401)
        .header("WWW-Authenticate", containsString("insufficient_user_authentication"));
    owner
        .asks()
        .body(Map.of("password", "not this one at all"))
        .post(path + "/secret")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/password"));
    assertEquals(before, owner.asks().get(path).header("ETag"));
    Browser browser = Browser.of(owner);
    cast.run("update session set confirmed_at = now() - interval '11 minutes'");
    browser.get(path.replace("/api/v1", "/desk/club")).send("form[action$=secret]", Map.of());
    assertEquals(403, browser.tidy().status());
    assertTrue(browser.page().select(".box-good").isEmpty());
    browser.send("form[action$=secret]", Map.of("confirm_", People.PASSWORD));
    assertEquals(200, browser.tidy().status());
    assertTrue(browser.page().select(".box-good").text().contains("whsec_"));
  }

  @Test
  void anOwnerChangesTestsRenewsTheSecretAndDeletesByProgram() {
    String hook = add(RESULTS);
    Map<String, Object> wrong = Map.of("label", "", "url", "chat", "events", List.of());
    owner
        .asks()
        .body(wrong)
        .post("/api/v1/webhooks")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/label"))
        .body("errors.pointer", hasItem("/url"))
        .body("errors.pointer", hasItem("/events"));
    owner
        .asks()
        .get("/api/v1/webhooks")
        .then()
        .body("items.size()", equalTo(1))
        .body("items[0].secret", nullValue());
    String path = "/api/v1/webhooks/" + hook;
    owner.asks().post(path + "/test").then().statusCode(202).body("state", equalTo("waiting"));
    tell();
    assertTrue(receiver.received().get(0).body().contains("webhook.test"));
    String etag =
        owner
            .asks()
            .body(Map.of("password", People.PASSWORD))
            .post(path + "/secret")
            .then()
            .statusCode(200)
            .extract()
            .header("ETag");
    owner.asks().post(path + "/test").then().statusCode(202);
    tell();
    assertEquals(
        2, receiver.received().get(1).headers().get("webhook-signature").split(" ").length);
    Map<String, Object> off =
        Map.of("label", "Chat", "url", url(), "events", List.of(RESULTS), "active", false);
    owner.asks().header("If-Match", "\"1\"").body(off).put(path).then().statusCode(412);
    owner
        .asks()
        .header("If-Match", etag)
        .body(off)
        .put(path)
        .then()
        .statusCode(200)
        .body("state", equalTo("off"));
    owner.asks().post(path + "/test").then().statusCode(422);
    String next =
        owner.asks().get(path + "/deliveries?size=1").then().statusCode(200).extract().path("next");
    owner
        .asks()
        .get(path + "/deliveries?size=1&cursor=" + next)
        .then()
        .body("items.size()", equalTo(1))
        .body("next", nullValue());
    owner.asks().delete(path).then().statusCode(204);
    owner.asks().get(path).then().statusCode(404);
    assertEquals(0, count("true"));
    assertEquals(
        4,
        cast.count(
            "select count(*) from audit where entity = 'webhook' and entity_id = '%s'"
                .formatted(hook)));
    assertEquals(
        0,
        cast.count(
            "select count(*) from audit where cast(detail as text) like '%whsec_%'"
                + " or cast(detail as text) like '%of-the-chat%'"));
  }

  @Test
  void anOwnerDoesTheSameOnAPageAndBadInputLosesNothing() {
    Browser page = Browser.of(owner).get("/desk/club/webhooks").tidy();
    page.send("main form", Map.of("label", "Chat", "url", "ftp://chat", "events", RESULTS));
    assertEquals(422, page.status());
    page.tidy();
    assertEquals("ftp://chat", page.field("url"));
    assertTrue(page.page().selectFirst("input[value='" + RESULTS + "']").hasAttr("checked"));
    page.send("main form", Map.of("url", url()));
    assertEquals(200, page.status());
    String secret = page.tidy().page().select(".box-good code").text();
    assertTrue(secret.startsWith("whsec_"));
    page.get(page.page().selectFirst("li.card h2 a").attr("href")).tidy();
    page.send("main form[action$=test]", Map.of());
    assertEquals(303, page.status());
    tell();
    assertEquals(1, receiver.received().size());
    assertTrue(page.follow().tidy().page().text().contains("arrived"));
    assertFalse(page.page().text().contains("whsec_A"), "the secret is not shown again");
    page.send("main form[action$=secret]", Map.of());
    assertFalse(page.tidy().page().select(".box-good code").text().equals(secret));
    page.send("main form", Map.of("active", "false"));
    assertEquals(303, page.status());
    assertTrue(page.follow().tidy().page().selectFirst("h1 + p, h1 ~ p").text().contains("Off"));
    page.send("main form[action$=delete]", Map.of());
    assertTrue(page.follow().tidy().page().text().contains("No webhooks yet."));
  }
}
