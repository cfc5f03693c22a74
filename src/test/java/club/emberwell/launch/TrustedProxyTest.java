package club.emberwell.launch;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.matchesPattern;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.HashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A server behind a proxy on this machine that it trusts; the test stands where the proxy does. */
@QuarkusTest
@TestProfile(TrustedProxyTest.Club.class)
class TrustedProxyTest {
  private static final int FREE = 2;
  private static final int WRITES = 4;

  /** The settings, as an operator's EMBERWELL_TRUSTED_PROXIES gives them. */
  public static class Club implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      Map<String, String> settings = new HashMap<>(Server.believing("127.0.0.1,10.9.0.0/16"));
      settings.put("emberwell.public-url", "http://localhost:8080");
      settings.put("emberwell.limits.door.sign-up-address", FREE + " in 1H, then 10S to 30M");
      settings.put("emberwell.limits.write.account", WRITES + " in 1H, then 1S to 1M");
      settings.put("emberwell.limits.write.address", (WRITES + 2) + " in 1H, then 1S to 1M");
      return settings;
    }
  }

  @Inject EntityManager db;

  @BeforeEach
  void forgetTries() {
    QuarkusTransaction.requiringNew()
        .run(() -> db.createNativeQuery("delete from attempt").executeUpdate());
  }

  private static RequestSpecification newcomer() {
    return People.json(Map.of("handle", People.freshHandle(), "password", People.PASSWORD));
  }

  private static int join(String forwardedFor) {
    return newcomer().header("X-Forwarded-For", forwardedFor).post("/api/v1/members").statusCode();
  }

  private static void useUp(String forwardedFor) {
    for (int i = 0; i < FREE; i++) {
      assertEquals(201, join(forwardedFor), forwardedFor);
    }
  }

  @Test
  void theLimitsCountTheAddressThatTheProxyNames() {
    useUp("203.0.113.5");
    newcomer()
        .header("X-Forwarded-For", "203.0.113.5")
        .post("/api/v1/members")
        .then()
        .statusCode(429)
        .header("Retry-After", matchesPattern("[1-9]\\d*"));
    assertEquals(201, join("198.51.100.7"));
    assertEquals(201, join("2001:db8:7::1"));
    // a request of the proxy itself counts on its own
    newcomer().post("/api/v1/members").then().statusCode(201);
  }

  @Test
  void whatTheSenderClaimsInFrontOfItsAddressChangesNothing() {
    for (int i = 0; i < FREE; i++) {
      assertEquals(201, join("192.0.2." + i + ", 203.0.113.5"));
    }
    assertEquals(429, join("198.51.100.7, 203.0.113.5"));
    assertEquals(429, join("127.0.0.1, 203.0.113.5"));
    assertEquals(201, join("203.0.113.5, 198.51.100.7"));
  }

  @Test
  void aChainOfTrustedProxiesIsReadToItsOuterEnd() {
    useUp("203.0.113.5, 10.9.3.4");
    assertEquals(429, join("203.0.113.5"));
    assertEquals(429, join("192.0.2.1, 203.0.113.5:4711, 10.9.200.1, 10.9.3.4"));
    // 10.8 is not trusted: it is the sender
    assertEquals(201, join("203.0.113.5, 10.8.0.1"));
  }

  @Test
  void severalHeadersAreOneChainAndWhatIsNoAddressEndsIt() {
    useUp("203.0.113.5");
    newcomer()
        .header("X-Forwarded-For", "192.0.2.1", "203.0.113.5")
        .post("/api/v1/members")
        .then()
        .statusCode(429);
    useUp("somewhere.example");
    // both count as the proxy
    assertEquals(429, join("192.0.2.77, unknown"));
  }

  /** What a public HTTPS address does by itself is in BehindHttpsTest. */
  @Test
  void cookiesAreSecureWhereTheProxySaysHttps() {
    Cookie behindTls =
        given()
            .header("X-Forwarded-Proto", "https")
            .get("/sign-in")
            .then()
            .statusCode(200)
            .extract()
            .detailedCookie("__Host-emberwell-form");
    assertTrue(behindTls.isSecured());
    Cookie plain = given().get("/sign-in").then().extract().detailedCookie("emberwell-form");
    assertFalse(plain.isSecured());
  }

  @Test
  void theSchemeOfTheProxyDecidesWhichOriginIsOurOwn() {
    for (Map.Entry<String, Integer> each :
        Map.of("https://club.example", 303, "https://evil.example", 403, "http://club.example", 403)
            .entrySet()) {
      Response form = given().header("X-Forwarded-Proto", "https").get("/sign-in");
      String token = form.htmlPath().getString("**.find { it.@name == 'form-token' }.@value");
      given()
          .redirects()
          .follow(false)
          .header("Host", "club.example")
          .header("X-Forwarded-Proto", "https")
          .header("X-Forwarded-Host", "evil.example")
          .header("Origin", each.getKey())
          .cookie("__Host-emberwell-form", form.getCookie("__Host-emberwell-form"))
          .formParam("form-token", token)
          .post("/sign-out")
          .then()
          .statusCode(each.getValue());
    }
  }

  private static int write(People.Person person, String from) {
    return person
        .asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .header("X-Forwarded-For", from)
        .body(Map.of("name", "Bench laser"))
        .post("/api/v1/machines")
        .statusCode();
  }

  @Test
  void aMemberWhoWritesTooMuchWaitsAndCanStillReadAndSignOut() {
    People.Person busy = People.join();
    for (int i = 0; i < WRITES; i++) {
      assertEquals(422, write(busy, "203.0.113.5"));
    }
    busy.asks()
        .header("Idempotency-Key", UUID.randomUUID().toString())
        .header("X-Forwarded-For", "198.51.100.7")
        .body(Map.of("name", "Bench laser"))
        .post("/api/v1/machines")
        .then()
        .statusCode(429)
        .header("Retry-After", matchesPattern("[1-9]\\d*"))
        .body("detail", containsString("send it again"));
    busy.asks().get("/api/v1/machines").then().statusCode(200);
    busy.asks().delete("/api/v1/me/sessions").then().statusCode(204);
  }

  @Test
  void manyAccountsAtOneAddressWaitTogether() {
    People.Person first = People.join();
    People.Person second = People.join();
    for (int i = 0; i < WRITES; i++) {
      assertEquals(422, write(first, "203.0.113.5"));
    }
    for (int i = 0; i < 2; i++) {
      assertEquals(422, write(second, "203.0.113.5"));
    }
    assertEquals(429, write(second, "203.0.113.99"));
    assertEquals(422, write(second, "198.51.100.7"));
  }
}
