package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.matchesPattern;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import io.restassured.http.Cookie;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A club with a public HTTPS address and a door that lets few in at a time. */
@QuarkusTest
@TestProfile(BehindHttpsTest.Club.class)
class BehindHttpsTest {
  /** The settings. */
  public static class Club implements QuarkusTestProfile {
    @Override
    public Map<String, String> getConfigOverrides() {
      return Map.of(
          "emberwell.public-url",
          "https://club.example",
          "emberwell.limits.door.sign-up-address",
          "3 in 1H, then 10S to 30M");
    }
  }

  @Test
  void cookiesAreBoundToTheHostAndTheBrowserIsToldToStayOnHttps() {
    Cookie cookie =
        given()
            .get("/test-only/form")
            .then()
            .header("Strict-Transport-Security", equalTo("max-age=31536000"))
            .extract()
            .detailedCookie("__Host-emberwell-form");
    assertTrue(cookie.isSecured());
    assertTrue(cookie.isHttpOnly());
    assertEquals("/", cookie.getPath());
    assertEquals(null, cookie.getDomain());
  }

  @Test
  void theOriginOfThePublicAddressIsOurOwn() {
    var page = given().get("/test-only/form");
    for (Map.Entry<String, Integer> each :
        Map.of("https://club.example", 200, "https://club.example.evil.example", 403).entrySet()) {
      given()
          .header("Origin", each.getKey())
          .cookie("__Host-emberwell-form", page.getCookie("__Host-emberwell-form"))
          .formParam("form-token", page.asString())
          .post("/test-only/form")
          .then()
          .statusCode(each.getValue());
    }
  }

  @Test
  void aForgedForwardedHeaderDoesNotGetRoundTheLimitOfAnAddress() {
    for (int i = 0; i < 3; i++) {
      join("203.0.113." + i).then().statusCode(201);
    }
    join("198.51.100.7")
        .then()
        .statusCode(429)
        .contentType("application/problem+json")
        .header("Retry-After", matchesPattern("[1-9]\\d*"));
  }

  private static io.restassured.response.Response join(String claimedAddress) {
    return People.json(Map.of("handle", People.freshHandle(), "password", People.PASSWORD))
        .header("X-Forwarded-For", claimedAddress)
        .header("Forwarded", "for=" + claimedAddress)
        .post("/api/v1/members");
  }

  @Test
  void networksAreCountedNotSingleAddresses() {
    assertEquals(ClientAddress.prefix("192.0.2.1"), ClientAddress.prefix("192.0.2.254"));
    assertEquals(ClientAddress.prefix("2001:db8::1"), ClientAddress.prefix("2001:db8::ffff"));
    assertEquals(ClientAddress.prefix("::ffff:192.0.2.1"), ClientAddress.prefix("192.0.2.9"));
    assertTrue(
        !ClientAddress.prefix("2001:db8:0:1::1").equals(ClientAddress.prefix("2001:db8::1")));
  }
}
