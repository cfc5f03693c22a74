package club.emberwell.member.mail;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
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
import java.time.Duration;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Letters on their way to a real SMTP server. */
@QuarkusTest
@WithTestResource(value = SmtpServer.class, scope = TestResourceScope.RESTRICTED_TO_CLASS)
class MailTest {
  private static final Pattern LINK = Pattern.compile("http\\S+(/(?:confirm|reset)/\\S{43})");

  GreenMail smtp;

  @Inject MailSender sender;
  @Inject MailOutbox outbox;
  @Inject MailOutboxRepository rows;
  @Inject EntityManager db;

  @BeforeEach
  void emptyLetterbox() throws Exception {
    QuarkusTransaction.requiringNew()
        .run(() -> db.createNativeQuery("delete from mail_outbox").executeUpdate());
    smtp.purgeEmailFromAllMailboxes();
  }

  private static String addressOf(Person person) {
    return person.handle() + "@elm-mail.example";
  }

  private static void giveAddress(Person person) {
    person
        .asks()
        .body(Map.of("email", addressOf(person), "password", People.PASSWORD))
        .post("/api/v1/me/email")
        .then()
        .statusCode(204);
  }

  private MimeMessage only() {
    sender.send();
    MimeMessage[] received = smtp.getReceivedMessages();
    assertEquals(1, received.length);
    return received[0];
  }

  private static String linkIn(MimeMessage letter) {
    Matcher link = LINK.matcher(GreenMailUtil.getBody(letter).replace("=\r\n", ""));
    assertTrue(link.find());
    return link.group(1);
  }

  private static String secretIn(MimeMessage letter) {
    String link = linkIn(letter);
    return link.substring(link.lastIndexOf('/') + 1);
  }

  @Test
  void anAddressIsBelievedOnceItsLetterArrivedAndItsLinkWasUsed() throws Exception {
    Person person = People.join();
    giveAddress(person);
    assertFalse(outbox.queue(UUID.fromString(person.id()), "watch", "News", "Unproved yet."));
    MimeMessage letter = only();
    assertEquals(addressOf(person), letter.getAllRecipients()[0].toString());
    assertEquals("Emberwell <club@post.example>", letter.getFrom()[0].toString());
    assertEquals("auto-generated", letter.getHeader("Auto-Submitted")[0]);
    person.asks().get("/api/v1/me").then().body("emailConfirmed", equalTo(false));
    String link = linkIn(letter);
    Browser browser = new Browser().get(link).tidy();
    person.asks().get("/api/v1/me").then().body("emailConfirmed", equalTo(false));
    browser.send("main form", Map.of()).tidy();
    assertEquals(200, browser.status());
    person.asks().get("/api/v1/me").then().body("emailConfirmed", equalTo(true));
    assertEquals(404, new Browser().get(link).tidy().status());
    assertTrue(outbox.queue(UUID.fromString(person.id()), "watch", "News", "Grüße: 3 µm."));
    smtp.purgeEmailFromAllMailboxes();
    MimeMessage news = only();
    assertEquals("News", news.getSubject());
    assertTrue(((String) news.getContent()).startsWith("Grüße: 3 µm."));
  }

  @Test
  void theLinkOfAnEarlierAddressProvesNothing() {
    Person person = People.join();
    giveAddress(person);
    String early = secretIn(only());
    person
        .asks()
        .body(Map.of("email", "other-" + addressOf(person), "password", People.PASSWORD))
        .post("/api/v1/me/email")
        .then()
        .statusCode(204);
    People.json(Map.of("link", early)).post("/api/v1/email-confirmations").then().statusCode(404);
    person.asks().get("/api/v1/me").then().body("emailConfirmed", equalTo(false));
  }

  @Test
  void aLostPasswordIsReplacedByTheLinkInALetterOnce() throws Exception {
    Person person = People.join();
    giveAddress(person);
    only();
    smtp.purgeEmailFromAllMailboxes();
    ask(addressOf(person).toUpperCase(java.util.Locale.ROOT), 202);
    awaitQueued(1);
    String secret = secretIn(only());
    redeem(secret, "short", 422);
    redeem(secret, "a new phrase of five", 204);
    redeem(secret, "a new phrase of six", 422);
    person.asks().get("/api/v1/me").then().statusCode(401);
    People.json(Map.of("handle", person.handle(), "password", "a new phrase of five", "label", "x"))
        .post("/api/v1/tokens")
        .then()
        .statusCode(201);
  }

  @Test
  void anUnknownAddressGetsTheSameAnswerAndNoLetter() throws Exception {
    Person known = People.join();
    giveAddress(known);
    only();
    smtp.purgeEmailFromAllMailboxes();
    ask("nobody-" + UUID.randomUUID() + "@elm-mail.example", 202);
    ask("no address", 422);
    ask(addressOf(known), 202);
    awaitQueued(1);
    assertEquals(addressOf(known), only().getAllRecipients()[0].toString());
  }

  @Test
  void aLinkOlderThanAnHourIsOver() throws Exception {
    Person person = People.join();
    giveAddress(person);
    only();
    smtp.purgeEmailFromAllMailboxes();
    ask(addressOf(person), 202);
    awaitQueued(1);
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              double life =
                  ((Number)
                          db.createNativeQuery(
                                  "select cast(extract(epoch from max(expires_at - created_at))"
                                      + " as double precision) from once_link"
                                      + " where kind = 'reset'")
                              .getSingleResult())
                      .doubleValue();
              assertEquals(3600, life, 1);
              db.createNativeQuery("update once_link set expires_at = now()").executeUpdate();
            });
    redeem(secretIn(only()), "a new phrase of five", 422);
  }

  @Test
  void nobodysLetterboxIsFilledByAStranger() {
    String address = "victim-" + UUID.randomUUID() + "@elm-mail.example";
    int[] statuses = new int[5];
    for (int i = 0; i < statuses.length; i++) {
      statuses[i] =
          People.json(Map.of("email", address)).post("/api/v1/password-resets").statusCode();
    }
    assertTrue(Arrays.stream(statuses).anyMatch(s -> s == 429), Arrays.toString(statuses));
    // the count of this network must not hold up the other tests
    QuarkusTransaction.requiringNew()
        .run(() -> db.createNativeQuery("delete from attempt").executeUpdate());
  }

  private static void ask(String email, int status) {
    People.json(Map.of("email", email)).post("/api/v1/password-resets").then().statusCode(status);
  }

  private static void redeem(String link, String password, int status) {
    People.json(Map.of("link", link, "password", password))
        .post("/api/v1/password-resets/redeem")
        .then()
        .statusCode(status);
  }

  /** The letter is queued beside the answer, so that both take as long for nobody. */
  private void awaitQueued(int letters) {
    await().pollInterval(Duration.ofMillis(20)).until(() -> outbox.state().waiting() >= letters);
  }

  @Test
  void aLetterLeavesExactlyIfTheDeedItTellsOfStands() {
    Person person = proved();
    UUID id = UUID.fromString(person.id());
    QuarkusTransaction.begin();
    assertTrue(outbox.queue(id, "test", "Never", "It did not happen."));
    QuarkusTransaction.rollback();
    sender.send();
    assertEquals(0, smtp.getReceivedMessages().length);
  }

  @Test
  void aMailServerThatIsAwayDelaysLettersAndLosesNone() {
    Person person = proved();
    UUID id = UUID.fromString(person.id());
    smtp.stop();
    assertTrue(outbox.queue(id, "test", "Late", "It comes all the same."));
    sender.send();
    assertEquals(1, outbox.state().waiting());
    List<?> errors = db.createNativeQuery("select last_error from mail_outbox").getResultList();
    assertFalse(String.valueOf(errors.get(0)).contains(addressOf(person)), errors.toString());
    smtp.start();
    SmtpServer.letIn(smtp);
    // a try may still meet a connection from before the stop and time out: the next one counts
    for (int tries = 0; tries < 3 && outbox.state().waiting() > 0; tries++) {
      due();
    }
    assertEquals(0, outbox.state().waiting());
    assertEquals(1, smtp.getReceivedMessages().length);
  }

  private void due() {
    QuarkusTransaction.requiringNew()
        .run(() -> db.createNativeQuery("update mail_outbox set due_at = now()").executeUpdate());
    sender.send();
  }

  @Test
  void aLetterIsGivenUpAfterItsLastTryAndTheOwnersPageSaysSo() {
    Person person = proved();
    outbox.queue(UUID.fromString(person.id()), "test", "Lost", "Nobody takes it.");
    QuarkusTransaction.requiringNew()
        .run(
            () ->
                db.createNativeQuery(
                        "update mail_outbox set tries = 11, recipient = 'no address at all'")
                    .executeUpdate());
    sender.send();
    assertEquals(1, outbox.state().failed());
    assertEquals(0, outbox.state().waiting());
  }

  @Test
  void twoNodesNeverTakeTheSameLetter() throws Exception {
    Person person = proved();
    for (int i = 0; i < 40; i++) {
      outbox.queue(UUID.fromString(person.id()), "test", "Letter " + i, "One of forty.");
    }
    ExecutorService nodes = Executors.newFixedThreadPool(4);
    CountDownLatch together = new CountDownLatch(4);
    Callable<Set<Long>> node =
        () -> {
          together.countDown();
          together.await();
          Set<Long> mine = new HashSet<>();
          for (int i = 0; i < 40; i++) {
            QuarkusTransaction.requiringNew()
                .call(() -> rows.claim(Duration.ofMinutes(5)))
                .ifPresent(letter -> mine.add(letter.id()));
          }
          return mine;
        };
    try {
      int sum = 0;
      Set<Long> all = new HashSet<>();
      for (Future<Set<Long>> each : nodes.invokeAll(Collections.nCopies(4, node))) {
        sum += each.get().size();
        all.addAll(each.get());
      }
      assertEquals(40, sum);
      assertEquals(40, all.size());
    } finally {
      nodes.shutdownNow();
    }
  }

  private Person proved() {
    Person person = People.join();
    giveAddress(person);
    People.json(Map.of("link", secretIn(only())))
        .post("/api/v1/email-confirmations")
        .then()
        .statusCode(204);
    try {
      smtp.purgeEmailFromAllMailboxes();
    } catch (com.icegreen.greenmail.store.FolderException e) {
      throw new IllegalStateException(e);
    }
    return person;
  }

  @Test
  void aBadAddressAndAWrongPasswordAreRefusedAtTheirFields() {
    Person person = People.join();
    person
        .asks()
        .body(Map.of("email", "not an address", "password", People.PASSWORD))
        .post("/api/v1/me/email")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/email"));
    person
        .asks()
        .body(Map.of("email", addressOf(person), "password", "not mine at all"))
        .post("/api/v1/me/email")
        .then()
        .statusCode(422)
        .body("errors.pointer", hasItem("/password"));
    given().get("/api/v1/club").then().body("mail", equalTo(true));
  }
}
