package club.emberwell.hook;

import static io.restassured.RestAssured.given;
import static org.awaitility.Awaitility.await;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People.Person;
import club.emberwell.api.member.Staff;
import club.emberwell.desk.Cast;
import club.emberwell.desk.flag.Flags;
import club.emberwell.entry.EntryRef;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.web.frame.Browser;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetAddress;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Telling another program what happens here, over a real line. */
@QuarkusTest
class WebhooksTest {
  private static final String RESULTS = "result.posted";

  @Inject Webhooks hooks;
  @Inject HookMatcher matcher;
  @Inject HookSender sender;
  @Inject DeliveryRepository deliveries;
  @Inject KnownHosts hosts;
  @Inject Cast cast;
  @Inject Staff staff;
  @Inject Flags flags;
  @Inject ObjectMapper json;

  private Receiver receiver;
  private Person owner;
  private Actor member;

  @BeforeEach
  void begin() throws IOException {
    cast.run("delete from webhook");
    receiver = new Receiver();
    // application.properties allows this name in tests
    hosts.say("receiver.test", InetAddress.getLoopbackAddress());
    owner = staff.person(Role.OWNER);
    member = cast.member();
    match();
  }

  @AfterEach
  void end() {
    receiver.close();
  }

  /** Until all is seen that was committed. */
  private void match() {
    await()
        .atMost(Duration.ofSeconds(30))
        .pollDelay(Duration.ZERO)
        .pollInterval(Duration.ofMillis(10))
        .until(
            () -> {
              while (matcher.some()) {
                continue;
              }
              return cast.count(
                      """
                      select count(*) from change_row c, change_reader p
                      where p.name = 'webhooks'
                        and (cast(cast(c.xid as text) as bigint), c.seq) > (p.xid, p.seq)""")
                  == 0;
            });
  }

  private void tell() {
    match();
    while (sender.some() > 0) {
      continue;
    }
  }

  private String url() {
    return "http://receiver.test:" + receiver.port() + "/hook?key=of-the-chat";
  }

  private String add(String... events) {
    return given()
        .spec(owner.asks())
        .body(Map.of("label", "Chat", "url", url(), "events", List.of(events)))
        .post("/api/v1/webhooks")
        .then()
        .statusCode(201)
        .extract()
        .path("id");
  }

  private List<JsonNode> told() throws IOException {
    List<JsonNode> bodies = new ArrayList<>();
    for (Receiver.Received one : receiver.received()) {
      bodies.add(json.readTree(one.body()));
    }
    return bodies;
  }

  private void due() {
    cast.run("update webhook_delivery set due_at = now() where state = 'waiting'");
  }

  private long count(String where) {
    return cast.count("select count(*) from webhook_delivery where " + where);
  }

  @Test
  void aNewResultIsToldOnceSignedAndInWords() throws IOException {
    String secret =
        given()
            .spec(owner.asks())
            .body(Map.of("label", "Chat", "url", url(), "events", List.of(RESULTS)))
            .post("/api/v1/webhooks")
            .then()
            .statusCode(201)
            .header("Cache-Control", "no-store")
            .body("state", equalTo("on"))
            .extract()
            .path("secret");
    EntryRef report = cast.report(member);
    cast.question(member, "Words of " + report.id());
    tell();
    tell();
    assertEquals(1, receiver.received().size());
    Receiver.Received one = receiver.received().get(0);
    JsonNode said = told().get(0);
    assertEquals(RESULTS, said.get("type").asText());
    assertTrue(said.get("timestamp").asText().matches("[-0-9]{10}T[:0-9]{8}\\.\\d{6}Z"));
    assertEquals(report.id().toString(), said.at("/data/id").asText());
    assertTrue(said.at("/data/title").asText().contains("surface engraving"), one.body());
    assertTrue(said.at("/data/url").asText().endsWith("/reports/" + report.id()));
    assertTrue(said.at("/data/api").asText().endsWith("/api/v1/reports/" + report.id()));
    assertFalse(one.body().contains(member.handle()), one.body());
    String id = one.headers().get("webhook-id");
    Instant at = Instant.ofEpochSecond(Long.parseLong(one.headers().get("webhook-timestamp")));
    assertTrue(Duration.between(at, Instant.now()).abs().toSeconds() < 60);
    assertEquals(
        HookSignature.header(List.of(secret), id, at, one.body()),
        one.headers().get("webhook-signature"));
  }

  @Test
  void whatHappensToAResultIsToldStepByStep() throws IOException {
    add("result.changed", "result.withdrawn", RESULTS);
    EntryRef report = cast.report(member);
    tell();
    cast.run("update entry set version = version + 1 where id = '%s'".formatted(report.id()));
    tell();
    // counted, but nobody changed it
    cast.run("update entry set updated_at = now() where id = '%s'".formatted(report.id()));
    tell();
    cast.run("update entry set state = 'held' where id = '%s'".formatted(report.id()));
    tell();
    assertEquals(
        List.of(RESULTS, "result.changed", "result.withdrawn"),
        told().stream().map(body -> body.get("type").asText()).toList());
    assertTrue(told().get(2).at("/data/title").isMissingNode(), "what is gone has no words");
  }

  @Test
  void whatIsHeldWaitsOrIsPrivateIsNeverTold() {
    add(RESULTS, "question.asked");
    EntryRef held = cast.report(member);
    cast.run("update entry set state = 'held' where id = '%s'".formatted(held.id()));
    EntryRef waits = cast.question(member, "Words of " + held.id());
    cast.run("update entry set state = 'waiting' where id = '%s'".formatted(waits.id()));
    cast.run(
        """
        insert into entry (id, kind, member_id, state, version, title, created_at, updated_at)
        values (gen_random_uuid(), 'lot', '%s', 'live', 1, 'x', now(), now())"""
            .formatted(member.memberId()));
    tell();
    assertEquals(List.of(), receiver.received());
    // told to the outbox, and held before it was sent
    EntryRef late = cast.report(member);
    match();
    cast.run("update entry set state = 'held' where id = '%s'".formatted(late.id()));
    tell();
    assertEquals(List.of(), receiver.received());
    assertEquals(1, count("state = 'dropped'"));
  }

  @Test
  void theDeskIsNamedTheItemAndNoneOfItsWords() throws IOException {
    add("desk.waiting", "desk.flagged", "desk.requested", "desk.word");
    EntryRef question = cast.question(member, "A secret word");
    cast.run(
        "update entry set state = 'held', title = 'Secret title' where id = '%s'"
            .formatted(question.id()));
    cast.run("update entry set state = 'waiting' where id = '%s'".formatted(question.id()));
    EntryRef report = cast.report(member);
    flags.flag(cast.member(), report, "wrong-numbers", "a secret note");
    cast.run(
        "insert into join_request (member_id, text, asked_at) values ('%s', 'secret', now())"
            .formatted(cast.member().memberId()));
    cast.report(member, "secretwood " + UUID.randomUUID(), "400 mm/s", "x");
    tell();
    assertEquals(
        List.of("desk.flagged", "desk.requested", "desk.waiting", "desk.word"),
        told().stream().map(body -> body.get("type").asText()).sorted().toList());
    assertFalse(receiver.received().toString().toLowerCase().contains("secret"));
    JsonNode flagged =
        told().stream()
            .filter(body -> body.get("type").asText().equals("desk.flagged"))
            .findFirst()
            .orElseThrow();
    assertTrue(flagged.at("/data/url").asText().endsWith("/desk/items/report/" + report.id()));
    assertTrue(flagged.at("/data/title").asText().startsWith("A report was flagged: "));
  }

  @Test
  void whatDoesNotArriveIsTriedAgainUnderTheSameIdAndGivenUpAfterADay() {
    String hook = add(RESULTS);
    receiver.status = 500;
    cast.report(member);
    tell();
    assertEquals(1, receiver.received().size(), "not tried again at once");
    assertEquals(1, count("state = 'waiting' and tries = 1 and due_at > now()"));
    receiver.status = 302;
    due();
    tell();
    assertEquals(2, receiver.received().size(), "a redirect is not followed");
    long first =
        cast.count("select cast(extract(epoch from due_at - now()) as int) from webhook_delivery");
    assertTrue(first > 45 && first <= 60, "the second pause is twice the first");
    owner
        .asks()
        .get("/api/v1/webhooks/" + hook + "/deliveries")
        .then()
        .statusCode(200)
        .body("items[0].state", equalTo("waiting"))
        .body("items[0].status", equalTo(302))
        .body("items[0].tries", equalTo(2));
    receiver.status = 200;
    due();
    tell();
    assertEquals(1, count("state = 'done' and tries = 3"));
    assertEquals(
        1,
        new HashSet<>(
                receiver.received().stream().map(one -> one.headers().get("webhook-id")).toList())
            .size());
    assertEquals(0, cast.count("select count(*) from webhook where failing_since is not null"));
    receiver.status = 503;
    cast.report(member);
    match();
    cast.run("update webhook_delivery set created_at = now() - interval '25 hours'");
    tell();
    assertEquals(1, count("state = 'failed' and status = 503"));
  }

  @Test
  void goneSwitchesItOffAndSoDoDaysOfFailureAndTheDeskSaysIt() {
    String hook = add(RESULTS);
    receiver.status = 410;
    cast.report(member);
    cast.report(member);
    tell();
    assertTrue(receiver.received().size() <= 2);
    owner.asks().get("/api/v1/webhooks/" + hook).then().body("state", equalTo("gone"));
    assertEquals(0, count("state = 'waiting'"));
    Browser desk = Browser.of(owner).get("/desk").tidy();
    assertTrue(desk.page().text().contains("1 webhook was switched off"));
    receiver.status = 500;
    String other = add(RESULTS);
    cast.run("update webhook set failing_since = now() - interval '6 days' where state = 'on'");
    cast.report(member);
    tell();
    owner.asks().get("/api/v1/webhooks/" + other).then().body("state", equalTo("failed"));
    cast.report(member);
    match();
    assertEquals(0, count("state = 'waiting'"), "one that is off is told nothing");
  }

  @Test
  void aNodeThatDiesWhileSendingLeavesItToAnother() {
    add(RESULTS);
    cast.report(member);
    match();
    var claimed =
        QuarkusTransaction.requiringNew().call(() -> deliveries.claim(4, Duration.ofMinutes(2)));
    assertEquals(1, claimed.size());
    tell();
    assertEquals(0, receiver.received().size(), "its lease is not over");
    due();
    tell();
    assertEquals(1, receiver.received().size());
    assertEquals(
        claimed.get(0).id().toString(), receiver.received().get(0).headers().get("webhook-id"));
  }

  @Test
  void severalNodesTellEachThingOnce() {
    add(RESULTS);
    IntStream.range(0, 12).forEach(i -> cast.report(member));
    List<CompletableFuture<Void>> nodes =
        IntStream.range(0, 3).mapToObj(i -> CompletableFuture.runAsync(this::tell)).toList();
    nodes.forEach(CompletableFuture::join);
    tell();
    assertEquals(12, receiver.received().size());
    assertEquals(12, count("state = 'done' and tries = 1"));
  }

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
        owner.asks().post(path + "/secret").then().statusCode(200).extract().header("ETag");
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
