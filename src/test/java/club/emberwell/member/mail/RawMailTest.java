package club.emberwell.member.mail;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.HeardLog;
import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.web.frame.Browser;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.common.TestResourceScope;
import io.quarkus.test.common.WithTestResource;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import jakarta.persistence.EntityManager;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.UUID;
import java.util.logging.Level;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Letters as a mail server gets them, byte by byte. */
@QuarkusTest
@WithTestResource(value = RawSmtp.class, scope = TestResourceScope.RESTRICTED_TO_CLASS)
class RawMailTest {
  private static final Pattern LINK =
      Pattern.compile("List-Unsubscribe: <https://emberwell\\.example(/unsubscribe/[^>]+)>");

  RawSmtp smtp;

  @Inject MailSender sender;
  @Inject MailOutbox outbox;
  @Inject ClubOptions club;
  @Inject EntityManager db;

  private Person person;

  @BeforeEach
  void somebodyWithAnAddress() {
    smtp.letters().clear();
    person = People.join();
    run(
        "update member set email = handle || '@elm-mail.example', email_confirmed_at = now()"
            + " where id = '%s'".formatted(person.id()));
  }

  private void run(String sql) {
    QuarkusTransaction.requiringNew().run(() -> db.createNativeQuery(sql).executeUpdate());
  }

  private String digest() {
    assertTrue(outbox.queue(id(), LetterKind.WATCH, "Your watches found 1 new entry", "Slate."));
    sender.send();
    assertEquals(1, smtp.letters().size());
    // unfolded, RFC 5322, 2.2.3
    return smtp.letters().get(0).replaceAll("\r\n[ \t]+", " ");
  }

  private UUID id() {
    return UUID.fromString(person.id());
  }

  @Test
  void aLetterSaysWhoSendsItAndHasNoEmptyHeader() throws Exception {
    String before = club.clubName();
    club.clubName("Grüne Esse, \"Hof\" <3>");
    try {
      String letter = digest();
      String head = letter.substring(0, letter.indexOf("\r\n\r\n"));
      for (String line : head.split("\r\n")) {
        assertTrue(line.matches("[!-9;-~]+: \\S.*"), "an empty header: " + line);
        assertTrue(line.matches("\\p{ASCII}*"), line);
      }
      assertFalse(head.contains("\r\nCc:"));
      // RFC 5322, 3.6.4
      assertTrue(head.matches("(?s).*Message-ID: <[0-9a-f-]{36}@emberwell\\.example>.*"), head);
      assertEquals(1, head.split("(?i)Message-ID: ", -1).length - 1);
      assertTrue(smtp.greetings().contains("EHLO emberwell.example"), "" + smtp.greetings());
      MimeMessage read =
          new MimeMessage(
              null,
              new ByteArrayInputStream(
                  smtp.letters().get(0).getBytes(StandardCharsets.ISO_8859_1)));
      InternetAddress from = (InternetAddress) read.getFrom()[0];
      assertEquals("club@post.example", from.getAddress());
      assertEquals("Grüne Esse Hof 3", from.getPersonal());
    } finally {
      club.clubName(before);
    }
  }

  /** RFC 8058, 3.1 and 3.2: the program posts this and nothing else, without cookie or sign-in. */
  @Test
  void onePressInTheMailProgramEndsDigestsForGood() {
    String watch =
        given()
            .spec(person.asks())
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .body(Map.of("query", "material=slate", "mail", true))
            .post("/api/v1/watches")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    String letter = digest();
    assertTrue(letter.contains("List-Unsubscribe-Post: List-Unsubscribe=One-Click\r\n"));
    String link = link(letter);
    assertTrue(outbox.queue(id(), LetterKind.WATCH, "On its way", "Not sent yet."));
    given()
        .header("Origin", "https://mail.example")
        .formParam("List-Unsubscribe", "One-Click")
        .post(link)
        .then()
        .statusCode(200);
    person.asks().get("/api/v1/watches/" + watch).then().body("mail", equalTo(false));
    assertEquals(0, outbox.state().waiting(), "what waited is not sent any more");
  }

  @Test
  void whoFollowsTheLinkIsAskedFirstAndAWrongLinkEndsNothing() {
    String link = link(digest());
    Browser browser = new Browser().get(link).tidy();
    assertEquals(200, browser.status());
    browser.send("main form", Map.of());
    assertEquals(200, browser.tidy().status());
    assertTrue(browser.page().text().contains("You get no more e-mails"));
    String other = link.replace(person.id(), UUID.randomUUID().toString());
    assertEquals(404, new Browser().get(other).tidy().status());
    given().post(other).then().statusCode(404);
    given().post("/unsubscribe/watch.x.y").then().statusCode(404);
  }

  /** RFC 5321, 3.4: a server may say in its answer where somebody is reached now. */
  @Test
  void whyALetterIsRefusedIsToldWithoutAnyAddress() {
    smtp.refuse("551 5.1.6 <" + person.handle() + "@elm-mail.example> is <gone@fir.example> now");
    try (HeardLog heard = new HeardLog("club.emberwell.member.mail", Level.INFO)) {
      assertTrue(outbox.queue(id(), "address", "Your address", "It was changed."));
      sender.send();
      String told = heard.texts().toString();
      assertTrue(told.contains("will be tried again") && told.contains("551"), told);
      assertFalse(told.contains("elm-mail") || told.contains("fir.example"), told);
    } finally {
      smtp.refuse(null);
      run("delete from mail_outbox");
    }
  }

  /** A connection that is just being closed must not be given to the next letter. */
  @Test
  void lettersOneAfterAnotherAllArriveAtTheirFirstTry() {
    for (int i = 1; i <= 100; i++) {
      assertTrue(outbox.queue(id(), "address", "Letter " + i, "One of many."));
      sender.send();
      assertEquals(i, smtp.letters().size());
    }
  }

  @Test
  void aLetterAboutTheAccountHasNothingToEnd() {
    assertTrue(outbox.queue(id(), "address", "Your address", "It was changed."));
    sender.send();
    assertFalse(smtp.letters().get(0).contains("List-Unsubscribe"));
  }

  private static String link(String letter) {
    Matcher link = LINK.matcher(letter);
    assertTrue(link.find(), letter);
    return link.group(1);
  }
}
