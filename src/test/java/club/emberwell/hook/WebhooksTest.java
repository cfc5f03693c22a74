package club.emberwell.hook;

import static io.restassured.RestAssured.given;
import static org.hamcrest.Matchers.equalTo;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.entry.EntryRef;
import club.emberwell.web.frame.Browser;
import com.fasterxml.jackson.databind.JsonNode;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.test.junit.QuarkusTest;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Telling another program what happens here, over a real line. */
@QuarkusTest
class WebhooksTest extends ToldClub {
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

  /** A dump keeps the transaction numbers of the server it was made on, here a busier one. */
  @Test
  void aRestoredClubTellsNothingTwiceAndWhatWaited() throws IOException {
    add(RESULTS);
    cast.report(member);
    tell();
    assertEquals(1, receiver.received().size());
    EntryRef waits = cast.report(member);
    cast.run(
        "update change_row set xid = cast(cast(cast(cast(xid as text) as bigint) + 9999999 as text) as xid8)");
    cast.run("update change_reader set xid = xid + 9999999");
    cast.run("update history_epoch set lies_at = '1/00000001/1/1'");
    EntryRef comes = cast.report(member);
    tell();
    tell();
    // each once; calls that go out together arrive in any order
    assertEquals(
        Stream.of(waits.id().toString(), comes.id().toString()).sorted().toList(),
        told().stream().skip(1).map(body -> body.at("/data/id").asText()).sorted().toList());
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
}
