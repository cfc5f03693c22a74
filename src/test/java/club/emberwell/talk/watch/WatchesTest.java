package club.emberwell.talk.watch;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.ReportService;
import club.emberwell.talk.Club;
import club.emberwell.talk.Matching;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.TalkPosting;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.Ties;
import club.emberwell.talk.WrittenTalk;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class WatchesTest {
  @Inject Watches watches;
  @Inject Inbox inbox;
  @Inject Matching matching;
  @Inject WatchDigest digest;
  @Inject KeptMail mail;
  @Inject TalkService talk;
  @Inject ReportService reports;
  @Inject EntryLife life;
  @Inject Club club;

  private Actor ada;
  private Actor ben;

  @BeforeEach
  void people() {
    ada = club.member();
    ben = club.member();
    serve();
  }

  private void serve() {
    matching.catchUp();
  }

  private List<UUID> inboxOf(Actor actor) {
    serve();
    return inbox.page(actor, Part.FIRST).rows().stream().map(Find::entryId).toList();
  }

  @Test
  void aWatchFindsANewReportOnceAndOnlyWhatItsSearchFinds() {
    watches.add(ada, "material=slate", null, false);
    UUID slate = club.report(ben, "slate", "first");
    UUID oak = club.report(ben, "oak", null);
    assertEquals(List.of(slate), inboxOf(ada));
    assertEquals(1, inbox.unread(ada));
    reports.withdraw(ben, oak, null);
    assertEquals(List.of(slate), inboxOf(ada));
    Find find = inbox.page(ada, Part.FIRST).rows().get(0);
    assertEquals("Slate", find.watch());
    assertEquals("/reports/" + slate, find.path());
    assertEquals("slate: surface engraving, CO2", find.title());
    assertEquals(ben.handle(), find.by());
  }

  @Test
  void wordsAreReadAsTheSearchReadsThem() {
    watches.add(ada, "q=axolotl", null, false);
    UUID near = club.report(ben, "slate", "axolotls everywhere");
    club.report(ben, "slate", "nothing of the kind");
    assertEquals(List.of(near), inboxOf(ada));
  }

  @Test
  void questionsAndNoticesAreFoundTooAndOnesOwnAreNot() {
    watches.add(ada, "material=cork", null, false);
    TalkEntry question =
        talk.post(
                ben, EntryKind.QUESTION, Club.posting("Does it smoulder?", "t", Club.about("cork")))
            .entry();
    TalkEntry notice =
        talk.post(ben, EntryKind.NOTICE, Club.posting("New cork supplier", "t", Ties.NONE)).entry();
    talk.post(ada, EntryKind.NOTICE, Club.posting("My own cork notice", "t", Ties.NONE));
    assertEquals(List.of(notice.id(), question.id()), inboxOf(ada));
  }

  @Test
  void anAnswerComesToWhoeverAskedWithoutAWatch() {
    TalkEntry question =
        talk.post(ada, EntryKind.QUESTION, Club.posting("A plain question", "t", Ties.NONE))
            .entry();
    talk.answer(ada, question.id(), TalkPosting.of(null, WrittenTalk.untitled("My own addition.")));
    TalkEntry answer =
        talk.answer(ben, question.id(), TalkPosting.of(null, WrittenTalk.untitled("Like this.")))
            .entry();
    assertEquals(List.of(answer.id()), inboxOf(ada));
    Find find = inbox.page(ada, Part.FIRST).rows().get(0);
    assertEquals(
        "/ask/" + question.id() + "?answer=" + answer.id() + "#answer-" + answer.id(), find.path());
    assertEquals("A plain question", find.title());
    assertEquals(List.of(), inboxOf(ben));
  }

  @Test
  void anAnswerReachesTheInboxAndNoMailEvenOfWhoWatchesByMail() {
    watches.add(ada, "material=slate", "Slate things", true);
    UUID question =
        talk.post(ada, EntryKind.QUESTION, Club.posting("Another question", "t", Ties.NONE))
            .entry()
            .id();
    talk.answer(ben, question, TalkPosting.of(null, WrittenTalk.untitled("Like this.")));
    assertEquals(1, inboxOf(ada).size());
    digest.sendDue(Instant.now());
    assertEquals(List.of(), mail.of(ada));
  }

  @Test
  void whatWasThereBeforeTheWatchIsNotNew() {
    club.report(ben, "walnut", "long before");
    serve();
    watches.add(ada, "material=walnut", null, false);
    UUID older = club.report(ben, "walnut", "after");
    club.run("update entry set created_at = now() - interval '2 days' where id = '" + older + "'");
    assertEquals(List.of(), inboxOf(ada));
  }

  @Test
  void aRemovedFindLeavesTheInboxAndComesBackOnceRestored() {
    watches.add(ada, "material=slate&material=cork", null, false);
    Actor moderator = club.person(Role.MODERATOR);
    UUID report = club.report(ben, "slate", "to be removed");
    assertEquals(List.of(report), inboxOf(ada));
    life.decide(moderator, new EntryRef(EntryKind.REPORT, report), Decision.REMOVE, "spam");
    assertEquals(List.of(), inboxOf(ada));
    assertEquals(0, inbox.unread(ada));
    life.decide(moderator, new EntryRef(EntryKind.REPORT, report), Decision.RESTORE, "no spam");
    assertEquals(List.of(report), inboxOf(ada));
  }

  @Test
  void twoWatchesShowAFindOnceAndReadingItReadsItForBoth() {
    watches.add(ada, "material=slate", null, false);
    watches.add(ada, "source=co2", null, false);
    UUID report = club.report(ben, "slate", "twice");
    assertEquals(List.of(report), inboxOf(ada));
    assertEquals(1, inbox.unread(ada));
    inbox.markRead(ben, inbox.page(ada, Part.FIRST).rows().get(0).id());
    assertEquals(1, inbox.unread(ada));
    inbox.markRead(ada, inbox.page(ada, Part.FIRST).rows().get(0).id());
    assertEquals(0, inbox.unread(ada));
    assertTrue(inbox.page(ada, Part.FIRST).rows().get(0).read());
  }

  @Test
  void whatIsInFrontOfAMemberIsReadForAllWatchesAndForNobodyElse() {
    watches.add(ada, "material=slate", null, false);
    watches.add(ada, "source=co2", null, false);
    Actor eve = club.member();
    watches.add(eve, "material=slate", null, false);
    UUID opened = club.report(ben, "slate", "opened");
    UUID other = club.report(ben, "slate", "not opened");
    serve();
    assertEquals(1, StatementCount.of(() -> inbox.markSeen(ada, List.of(opened))).size());
    assertEquals(1, inbox.unread(ada));
    assertEquals(2, inbox.unread(eve));
    assertEquals(
        List.of(other),
        inbox.page(ada, Part.FIRST).rows().stream()
            .filter(f -> !f.read())
            .map(Find::entryId)
            .toList());
  }

  @Test
  void markingAllReadLeavesWhatCameLater() {
    watches.add(ada, "material=slate", null, false);
    club.report(ben, "slate", "one");
    serve();
    long seen = inbox.page(ada, Part.FIRST).rows().get(0).id();
    club.report(ben, "slate", "two");
    serve();
    inbox.markAllRead(ada, seen);
    assertEquals(1, inbox.unread(ada));
  }

  @Test
  void theSameSearchHoweverWrittenIsOneWatch() {
    Watch first = watches.add(ada, "?source=diode&q=halo&page=3&sort=newest", null, false);
    Watch again = watches.add(ada, "q=halo&source=diode", "another name", true);
    assertEquals(first.id(), again.id());
    assertEquals("q=halo&source=diode", first.query());
    assertEquals("“halo”, Diode", first.label());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "nonsense=1",
        "source=maser",
        "powerMin=fast",
        "size=100000",
        "q=a&q=b",
        "effect=%ZZ",
        "near=x"
      })
  void aSearchThatCannotBeReadIsNotKept(String query) {
    EntryRefused refused =
        assertThrows(EntryRefused.class, () -> watches.add(ada, query, null, false));
    assertEquals("/query", refused.remarks().get(0).field());
  }

  @Test
  void tooMuchIsNotKept() {
    assertThrows(EntryRefused.class, () -> watches.add(ada, "q=" + "x".repeat(5000), null, false));
    assertThrows(EntryRefused.class, () -> watches.add(ada, "q=x", "l".repeat(200), false));
    for (int i = 0; i < TalkLimits.WATCHES; i++) {
      watches.add(ada, "q=number" + i, null, false);
    }
    assertThrows(EntryRefused.class, () -> watches.add(ada, "q=more", null, false));
  }

  @Test
  void somebodyElsesWatchIsUnknown() {
    Watch watch = watches.add(ada, "q=mine", null, false);
    assertThrows(EntryUnknown.class, () -> watches.get(ben, watch.id()));
    assertThrows(EntryUnknown.class, () -> watches.renewFeed(ben, watch.id()));
    assertThrows(
        EntryUnknown.class, () -> watches.change(ben, watch.id(), watch.version(), "x", true));
    watches.remove(ben, watch.id());
    assertEquals(1, watches.of(ada).size());
    assertThrows(
        EntryChanged.class, () -> watches.change(ada, watch.id(), watch.version() + 1, "x", true));
  }

  @Test
  void aFeedHasAnAddressNobodyGuessesThatCanBeChangedAndStopped() {
    Watch watch = watches.add(ada, "material=slate", null, false);
    club.report(ben, "slate", "for the feed");
    serve();
    String first = watches.renewFeed(ada, watch.id()).feedToken();
    assertTrue(first.matches("[A-Za-z0-9_-]{43}"));
    assertEquals(1, watches.feed(first).orElseThrow().finds().size());
    String second = watches.renewFeed(ada, watch.id()).feedToken();
    assertNotEquals(first, second);
    assertTrue(watches.feed(first).isEmpty());
    assertTrue(watches.feed(second).isPresent());
    club.run("update member set status = 'banned' where id = '" + ada.memberId() + "'");
    assertTrue(watches.feed(second).isEmpty());
    club.run("update member set status = 'active' where id = '" + ada.memberId() + "'");
    watches.stopFeed(ada, watch.id());
    assertTrue(watches.feed(second).isEmpty());
    assertTrue(watches.feed("' or true --").isEmpty());
  }

  @Test
  void aFeedThatFoundNothingYetIsThereAllTheSame() {
    Watch watch = watches.add(ada, "q=nothing-like-it", null, false);
    String token = watches.renewFeed(ada, watch.id()).feedToken();
    Feed feed = watches.feed(token).orElseThrow();
    assertEquals(List.of(), feed.finds());
    assertEquals(watch.id(), feed.watchId());
  }

  @Test
  void aDigestGoesOutOnceADayWithWhatIsNew() {
    watches.add(ada, "material=slate", "Slate things", true);
    watches.add(ada, "material=cork", "Cork things", false);
    UUID slate = club.report(ben, "slate", "for the mail");
    club.report(ben, "cork", "not for the mail");
    serve();
    Instant now = Instant.now();
    digest.sendDue(now);
    List<KeptMail.Sent> first = mail.of(ada);
    assertEquals(1, first.size());
    assertEquals("Your watches found 1 new entry", first.get(0).subject());
    assertTrue(first.get(0).text().contains("/reports/" + slate));
    assertTrue(first.get(0).text().contains("found by Slate things"));
    club.report(ben, "slate", "for tomorrow's mail");
    serve();
    digest.sendDue(now.plus(Duration.ofHours(23)));
    assertEquals(1, mail.of(ada).size());
    digest.sendDue(now.plus(Duration.ofHours(25)));
    assertEquals(2, mail.of(ada).size());
    digest.sendDue(now.plus(Duration.ofDays(3)));
    assertEquals(2, mail.of(ada).size());
  }

  @Test
  void aDigestWaitsUntilTheAddressIsProved() {
    club.run("update member set email_confirmed_at = null where id = '" + ada.memberId() + "'");
    watches.add(ada, "material=slate", "Slate things", true);
    UUID slate = club.report(ben, "slate", "found before the address was proved");
    serve();
    Instant now = Instant.now();
    digest.sendDue(now);
    assertEquals(List.of(), mail.of(ada));
    club.run("update member set email_confirmed_at = now() where id = '" + ada.memberId() + "'");
    digest.sendDue(now.plus(Duration.ofMinutes(10)));
    assertEquals(1, mail.of(ada).size());
    assertTrue(mail.of(ada).get(0).text().contains("/reports/" + slate));
  }

  @Test
  void theInboxItsCountAndAFeedAreOneStatementEach() {
    Watch watch = watches.add(ada, "material=slate", null, false);
    for (int i = 0; i < TalkLimits.INBOX_PAGE + 3; i++) {
      club.report(ben, "slate", "number " + i);
    }
    serve();
    String token = watches.renewFeed(ada, watch.id()).feedToken();
    assertEquals(1, StatementCount.of(() -> inbox.page(ada, Part.FIRST)).size());
    assertEquals(1, StatementCount.of(() -> inbox.unread(ada)).size());
    assertEquals(1, StatementCount.of(() -> watches.feed(token)).size());
    assertEquals(TalkLimits.INBOX_PAGE, inbox.page(ada, Part.FIRST).rows().size());
    assertTrue(inbox.page(ada, Part.FIRST).more());
    assertEquals(3, inbox.page(ada, Part.page(1)).rows().size());
    assertFalse(inbox.page(ada, Part.page(1)).more());
  }

  @Test
  void aWatchThatEndsTakesItsFindsAlong() {
    Watch watch = watches.add(ada, "material=slate", null, false);
    club.report(ben, "slate", "gone with its watch");
    serve();
    watches.remove(ada, watch.id());
    assertEquals(List.of(), inbox.page(ada, Part.FIRST).rows());
  }
}
