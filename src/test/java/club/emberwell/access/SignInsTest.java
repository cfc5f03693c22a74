package club.emberwell.access;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People.Person;
import club.emberwell.web.frame.Browser;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import java.util.logging.SimpleFormatter;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who came in, was kept out, or left: in the log, and for the member (OWASP ASVS 5.0, V16.3). */
@QuarkusTest
class SignInsTest {
  private static final Logger LOG = Logger.getLogger("emberwell.sign-in");
  private static final String MINE = "/api/v1/me/sign-ins";

  @Inject EntityManager db;

  private final List<String> lines = new CopyOnWriteArrayList<>();
  private final Handler kept =
      new Handler() {
        @Override
        public void publish(LogRecord line) {
          lines.add(new SimpleFormatter().formatMessage(line));
        }

        @Override
        public void flush() {}

        @Override
        public void close() {}
      };

  @BeforeEach
  void listen() {
    LOG.addHandler(kept);
    // tests are told of warnings only
    LOG.setLevel(Level.INFO);
  }

  @AfterEach
  void deaf() {
    LOG.removeHandler(kept);
    LOG.setLevel(null);
  }

  private static void fails(String handle, String password) {
    new Browser().get("/sign-in").send("main form", Map.of("handle", handle, "password", password));
  }

  @Test
  void aMemberSeesWhoCameInWasKeptOutAndLeft() {
    Person person = People.join();
    fails(person.handle(), "not this one at all");
    Browser browser = Browser.of(person).get("/me");
    browser.send("form[action=/sign-out]", Map.of());
    person
        .asks()
        .get(MINE)
        .then()
        .statusCode(200)
        .body(
            "items.event",
            // the token of this very question is used for the first time
            contains("token-elsewhere", "signed-out", "signed-in", "wrong-password"))
        .body("items[1].network", equalTo("127.0.0.0/24"));
    Browser again = Browser.of(person).get("/me/sign-ins").tidy();
    assertEquals(5, again.page().select("main li.card").size());
    assertTrue(again.page().text().contains("Wrong password"));
    People.join().asks().get(MINE).then().body("items.event", contains("token-elsewhere"));
  }

  @Test
  void eachIsOneLineOfTheLogWithoutWhatWasTyped() {
    Person person = People.join();
    fails(person.handle(), "not this one at all");
    fails("my-secret-by-mistake", "not this one at all");
    Browser.of(person);
    assertEquals(
        List.of(
            "event=wrong-password member=" + person.id() + " network=127.0.0.0/24",
            "event=wrong-password member=unknown-name network=127.0.0.0/24",
            "event=signed-in member=" + person.id() + " network=127.0.0.0/24"),
        lines);
    assertFalse(lines.toString().contains(person.handle()));
  }

  @Test
  void aTokenIsNotedOnceFromEachNetwork() {
    Person person = People.join();
    person.asks().get("/api/v1/me").then().statusCode(200);
    person.asks().get("/api/v1/me").then().statusCode(200);
    assertEquals(1, lines.size(), "" + lines);
    run("update api_token set last_network = '192.0.2.0/24' where id = '%s'", person.tokenId());
    person.asks().get("/api/v1/me").then().statusCode(200);
    assertEquals(1, lines.size(), "known from before: " + lines);
    run("delete from token_network where token_id = '%s'", person.tokenId());
    run("update api_token set last_network = '192.0.2.0/24' where id = '%s'", person.tokenId());
    person.asks().get("/api/v1/me").then().statusCode(200);
    assertEquals(2, lines.size(), "" + lines);
  }

  private void run(String sql, String id) {
    QuarkusTransaction.requiringNew()
        .run(() -> db.createNativeQuery(sql.formatted(id)).executeUpdate());
  }

  @Test
  void aNewPasswordIsNotedAndAllOfItGoesWithTheAccount() {
    Person person = People.join();
    String fresh = "ten grey herons left";
    person
        .asks()
        .body(Map.of("current", People.PASSWORD, "password", fresh, "keepTokens", true))
        .post("/api/v1/me/password")
        .then()
        .statusCode(204);
    person.asks().get(MINE).then().body("items.event", hasItem("password-changed"));
    person
        .asks()
        .body(Map.of("choice", "keep", "password", fresh))
        .post("/api/v1/me/erasure")
        .then()
        .statusCode(204);
    assertEquals(
        0L,
        ((Number)
                db.createNativeQuery(
                        "select count(*) from sign_in where member_id = cast(?1 as uuid)")
                    .setParameter(1, person.id())
                    .getSingleResult())
            .longValue());
    given().auth().oauth2(person.token()).get(MINE).then().statusCode(401);
  }
}
