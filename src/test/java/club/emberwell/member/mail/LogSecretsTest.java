package club.emberwell.member.mail;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.HeardLog;
import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.card.Shop;
import club.emberwell.hook.KnownHosts;
import club.emberwell.member.Role;
import club.emberwell.web.account.OwnProvider;
import club.emberwell.web.frame.Browser;
import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.GreenMailUtil;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.TestResourceScope;
import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.mail.internet.MimeMessage;
import jakarta.persistence.EntityManager;
import jakarta.persistence.PersistenceException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.logging.Level;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Whatever lets somebody in, and whoever tried, stays out of the log, however much of it is written
 * (OWASP ASVS 5.0, V16.2.5; OWASP Logging Cheat Sheet, "Data to exclude").
 */
@QuarkusTest
@WithTestResource(value = SmtpServer.class, scope = TestResourceScope.RESTRICTED_TO_CLASS)
@WithTestResource(value = OwnProvider.class, scope = TestResourceScope.RESTRICTED_TO_CLASS)
class LogSecretsTest {
  private static final Pattern LINK = Pattern.compile("http\\S+(/(?:confirm|reset)/(\\S{43}))");
  private static final Pattern UNSUBSCRIBE = Pattern.compile("<http\\S+?(/unsubscribe/[^>]+)>");
  private static final String OTHER_PASSWORD = "nine wet herons by the mill";

  GreenMail smtp;
  OwnProvider provider;

  @Inject MailSender sender;
  @Inject MailOutbox outbox;
  @Inject Staff staff;
  @Inject KnownHosts hosts;
  @Inject EntityManager db;

  private final List<String> secrets = new ArrayList<>();
  private List<HeardLog> heard;

  @BeforeEach
  void listen() {
    heard =
        List.of(
            new HeardLog("", Level.INFO),
            new HeardLog("club.emberwell", Level.FINE),
            new HeardLog("emberwell", Level.FINE));
  }

  @AfterEach
  void nothingSecretWasTold() {
    heard.forEach(HeardLog::close);
    String told =
        heard.stream()
            .flatMap(h -> h.lines().stream())
            // the mail server beside the tests talks into the same log
            .filter(line -> !line.logger().startsWith("com.icegreen"))
            .map(HeardLog.Line::text)
            .collect(Collectors.joining("\n"));
    assertFalse(secrets.isEmpty());
    for (String secret : secrets) {
      assertTrue(secret.length() > 7, "too short to be looked for: " + secret);
      assertFalse(told.contains(secret), () -> secret + " was told: " + told);
    }
  }

  private String secret(String secret) {
    secrets.add(secret);
    return secret;
  }

  /** A cookie that is taken back is empty. */
  private void secretsOf(Browser browser) {
    browser.cookies().values().stream().filter(value -> !value.isEmpty()).forEach(this::secret);
  }

  private boolean told(String words) {
    return heard.stream().anyMatch(h -> h.texts().stream().anyMatch(line -> line.contains(words)));
  }

  @Test
  void signingInAndFailingTo() {
    Person person = staff.person(Role.MEMBER);
    secrets.addAll(List.of(People.PASSWORD, person.token(), person.handle()));
    Browser browser = Browser.of(person);
    secretsOf(browser);
    browser.get("/me?key=" + secret("typed-into-the-address"));
    Browser stranger = new Browser().get("/sign-in");
    for (String name : List.of(person.handle(), secret("password-as-a-name"), "a@fir.example")) {
      stranger.send("main form", Map.of("handle", name, "password", secret("wrong-" + name)));
      assertEquals(401, stranger.status());
    }
    secret("a@fir.example");
    assertTrue(told("event=signed-in") && told("event=wrong-password"));
  }

  @Test
  void tokensGoodAndBad() {
    Person person = staff.person(Role.MEMBER);
    secret(person.token());
    person.asks().get("/api/v1/me").then().statusCode(200);
    person.asks().get("/api/v1/desk/members?q=" + secret("asked-for")).then().statusCode(403);
    String wrong = secret("ew_" + UUID.randomUUID());
    given().auth().oauth2(wrong).get("/api/v1/me").then().statusCode(401);
    given().get("/api/test-only/fault?token=" + person.token()).then().statusCode(500);
    assertTrue(told("kind=token-unknown") && told("request failed"));
  }

  @Test
  void linksInLetters() {
    Person person = staff.person(Role.MEMBER);
    String address = secret(person.handle() + "@elm-mail.example");
    person
        .asks()
        .body(Map.of("email", address, "password", People.PASSWORD))
        .post("/api/v1/me/email")
        .then()
        .statusCode(204);
    new Browser().get(link(letter())).send("main form", Map.of());
    People.json(Map.of("email", address)).post("/api/v1/password-resets").then().statusCode(202);
    await().until(() -> outbox.state().waiting() > 0);
    String reset = link(letter());
    new Browser().get(reset).send("main form", Map.of("password", secret(OTHER_PASSWORD)));
    assertEquals(404, new Browser().get(reset).status());
    assertTrue(
        outbox.queue(UUID.fromString(person.id()), LetterKind.WATCH, "One new entry", "Slate."));
    Matcher found = UNSUBSCRIBE.matcher(GreenMailUtil.getHeaders(letter()).replaceAll("\\s+", ""));
    assertTrue(found.find());
    new Browser().get(secret(found.group(1))).send("main form", Map.of());
    given().post(found.group(1) + "x").then().statusCode(404);
    smtp.stop();
    outbox.queue(UUID.fromString(person.id()), "address", "Not to be sent", "Slate.");
    sender.send();
    assertTrue(told("will be tried again"));
    smtp.start();
    SmtpServer.letIn(smtp);
    QuarkusTransaction.requiringNew()
        .run(() -> db.createNativeQuery("delete from mail_outbox").executeUpdate());
  }

  @Test
  void linksToJobCards() {
    Shop shop = Shop.open("closed");
    String link = secret(shop.link());
    secret(shop.owner().token());
    assertEquals(200, new Browser().get("/cards/" + link).status());
    String links = "/api/v1/recipes/" + shop.recipe() + "/links";
    String id = shop.owner().asks().get(links).path("items[0].id");
    shop.owner().asks().delete(links + "/" + id).then().statusCode(204);
    assertEquals(410, new Browser().get("/cards/" + link).status());
    assertEquals(404, new Browser().get("/cards/" + secret("no-such-secret")).status());
  }

  private MimeMessage letter() {
    sender.send();
    MimeMessage[] received = smtp.getReceivedMessages();
    assertEquals(1, received.length);
    try {
      smtp.purgeEmailFromAllMailboxes();
    } catch (com.icegreen.greenmail.store.FolderException e) {
      throw new IllegalStateException(e);
    }
    return received[0];
  }

  private String link(MimeMessage letter) {
    Matcher link = LINK.matcher(GreenMailUtil.getBody(letter).replace("=\r\n", ""));
    assertTrue(link.find());
    secret(link.group(2));
    return link.group(1);
  }

  @Test
  void whatOwnersHandOut() {
    Person owner = staff.person(Role.OWNER);
    secret(owner.token());
    Person member = staff.person(Role.MEMBER);
    String code =
        owner
            .asks()
            .body(Map.of("note", "open evening", "uses", 1, "days", 7))
            .post("/api/v1/invitations")
            .then()
            .statusCode(201)
            .extract()
            .path("code");
    new Browser().get("/invitation/" + secret(code));
    given().get("/invitation/" + secret("no-invitation-at-all"));
    String url =
        owner
            .asks()
            .body(Map.of("handle", member.handle(), "password", People.PASSWORD))
            .post("/api/v1/password-resets/links")
            .then()
            .statusCode(201)
            .extract()
            .path("url");
    new Browser().get("/reset/" + secret(url.substring(url.lastIndexOf('/') + 1)));
    hosts.say("receiver.test", InetAddress.getLoopbackAddress());
    String hook = "https://receiver.test/" + secret("path-that-is-a-key");
    secret(
        owner
            .asks()
            .body(Map.of("label", "Chat", "url", hook, "events", List.of("result.posted")))
            .post("/api/v1/webhooks")
            .then()
            .statusCode(201)
            .extract()
            .path("secret"));
  }

  /** PostgreSQL says in its detail what a row holds that it refuses. */
  @Test
  void whatARefusedRowHolds() {
    Person person = staff.person(Role.MEMBER);
    Person other = staff.person(Role.MEMBER);
    secret(person.handle());
    QuarkusTransaction.begin();
    assertThrows(
        PersistenceException.class,
        () ->
            db.createNativeQuery("update member set handle = ?1 where id = cast(?2 as uuid)")
                .setParameter(1, person.handle())
                .setParameter(2, other.id())
                .executeUpdate());
    QuarkusTransaction.rollback();
    assertTrue(told("violates unique constraint"));
  }

  @Test
  void aSignInAtTheProvider() {
    String name = secret(People.freshHandle());
    provider.isUsedBy(UUID.randomUUID().toString(), name, secret(name + "@guild.example"), true);
    secret("ash bark tea");
    Browser browser = new Browser().get("/sign-in/sso?to=/bench");
    String back =
        given()
            .redirects()
            .follow(false)
            .urlEncodingEnabled(false)
            .get(browser.header("Location"))
            .header("Location")
            .replaceFirst("^https?://[^/]+", "");
    for (String part : back.substring(back.indexOf('?') + 1).split("&")) {
      if (part.startsWith("code=") || part.startsWith("state=")) {
        secret(part.substring(part.indexOf('=') + 1));
      }
    }
    new Browser().get(back);
    browser.get(back).follow().send("main form", Map.of());
    assertEquals("/bench", browser.location());
    secretsOf(browser);
    assertTrue(told("event=signed-in"));
  }
}
