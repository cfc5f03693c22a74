package club.emberwell.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.desk.home.Desk;
import club.emberwell.entry.EntryKind;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.talk.TalkIndexNow;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkFinder;
import club.emberwell.talk.TalkLimits;
import club.emberwell.talk.TalkService;
import club.emberwell.talk.watch.Inbox;
import club.emberwell.talk.watch.WatchMatcher;
import club.emberwell.talk.watch.Watches;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.QuarkusTestProfile;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.io.IOException;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** In a club of 5,000 with a year of talk, each list is one screen and one statement. */
@QuarkusTest
@TestProfile(YearOfTalkTest.OwnDatabase.class)
class YearOfTalkTest {
  /** An application of its own, so that nobody else's tests run in a club this large. */
  public static class OwnDatabase implements QuarkusTestProfile {}

  /** What a step takes beside reading the watches and writing finds, a batch at a time. */
  private static final int STEP = 12;

  private static boolean made;

  @Inject YearOfTalk year;
  @Inject Inbox inbox;
  @Inject Watches watches;
  @Inject WatchMatcher matcher;
  @Inject TalkService talk;
  @Inject TalkFinder finder;
  @Inject TalkIndexNow index;
  @Inject Desk desk;

  private final Actor busy =
      new Actor(YearOfTalk.busyMember(), "year-1", Role.MODERATOR, UnitPreferences.metric());

  @BeforeEach
  void once() throws IOException {
    if (!made) {
      // the first look at the change rows only says where to begin
      matcher.matchSome();
      year.make();
      made = true;
    }
  }

  private static void takesOneStatement(Runnable work) {
    List<String> statements = StatementCount.of(work);
    assertEquals(1, statements.size(), () -> String.join("\n", statements));
  }

  @Test
  void theInboxAndItsCountAreBoundedHoweverMuchWasFound() {
    takesOneStatement(() -> inbox.page(busy, Part.FIRST));
    takesOneStatement(() -> inbox.page(busy, Part.page(100)));
    takesOneStatement(() -> inbox.unread(busy));
    assertEquals(TalkLimits.INBOX_PAGE, inbox.page(busy, Part.FIRST).rows().size());
    assertTrue(inbox.page(busy, Part.FIRST).more());
    assertEquals(TalkLimits.INBOX_PAGE, inbox.page(busy, Part.page(100)).rows().size());
    assertEquals(List.of(), inbox.page(busy, Part.page(Part.LAST_PAGE)).rows());
    assertEquals(TalkLimits.UNREAD + 1, inbox.unread(busy));
  }

  @Test
  void aFeedIsBoundedHoweverMuchItsWatchFound() {
    takesOneStatement(() -> watches.feed(YearOfTalk.FEED));
    int shown = watches.feed(YearOfTalk.FEED).orElseThrow().finds().size();
    assertTrue(shown > 0 && shown <= TalkLimits.FEED, () -> shown + " finds");
  }

  @Test
  void theListsOfQuestionsAndNoticesAreBoundedOnTheFirstPageAndFarBack() {
    for (int page : new int[] {0, 200, Part.LAST_PAGE}) {
      takesOneStatement(() -> finder.find(EntryKind.QUESTION, "", false, Part.page(page)));
      takesOneStatement(() -> finder.find(EntryKind.QUESTION, "", true, Part.page(page)));
      takesOneStatement(() -> finder.find(EntryKind.NOTICE, "", false, Part.page(page)));
    }
    assertEquals(
        TalkLimits.PAGE, finder.find(EntryKind.QUESTION, "", false, Part.page(200)).rows().size());
    assertEquals(
        TalkLimits.PAGE, finder.find(EntryKind.NOTICE, "", false, Part.FIRST).rows().size());
  }

  @Test
  void aQuestionWithThousandsOfAnswersShowsOnePageOfThem() {
    List<String> statements =
        StatementCount.of(() -> talk.thread(busy, YearOfTalk.busyQuestion(), Part.FIRST));
    assertEquals(2, statements.size());
    Slice<TalkEntry> answers = talk.thread(busy, YearOfTalk.busyQuestion(), Part.FIRST).answers();
    assertEquals(TalkLimits.ANSWERS, answers.rows().size());
    assertTrue(answers.more());
  }

  @Test
  void theLastOfThousandsOfAnswersIsFoundOnItsPageByOneMoreStatement() {
    UUID last = YearOfTalk.id("cc", YearOfTalk.ANSWERS - 5);
    List<String> statements =
        StatementCount.of(() -> talk.threadAt(busy, YearOfTalk.busyQuestion(), last));
    assertEquals(3, statements.size());
    TalkService.Thread thread = talk.threadAt(busy, YearOfTalk.busyQuestion(), last);
    assertTrue(thread.ids().contains(last));
    assertTrue(thread.answers().page() > 100);
  }

  @Test
  void readingAPageReadsItsFindsInOneStatement() {
    List<UUID> seen =
        IntStream.rangeClosed(YearOfTalk.BUSY_HITS - TalkLimits.ANSWERS, YearOfTalk.BUSY_HITS)
            .mapToObj(n -> YearOfTalk.id("bb", n))
            .toList();
    takesOneStatement(() -> inbox.markSeen(busy, seen));
    assertTrue(
        inbox.page(busy, Part.FIRST).rows().stream()
            .allMatch(find -> find.read() == seen.contains(find.entryId())));
  }

  @Test
  void theDeskShowsOneScreenOfWhatWaits() {
    desk.home(busy);
    assertTrue(StatementCount.of(() -> desk.home(busy)).size() <= 7);
    takesOneStatement(() -> desk.waiting(busy, Part.FIRST));
    assertEquals(DeskLimits.PAGE, desk.waiting(busy, Part.FIRST).rows().size());
    assertTrue(desk.waiting(busy, Part.FIRST).more());
  }

  @Test
  void everythingLiveIsFoundByOneStatementALook() {
    index.catchUp();
    assertFalse(finder.find(EntryKind.NOTICE, "notice", false, Part.FIRST).rows().isEmpty());
    takesOneStatement(() -> finder.find(EntryKind.QUESTION, "halo", false, Part.FIRST));
    takesOneStatement(() -> finder.find(EntryKind.QUESTION, "halo", false, Part.page(30)));
    takesOneStatement(() -> finder.similar("a halo round the letters on slate"));
    SearchQuery slate = SearchQuery.everything().withFacet("material", List.of("slate"));
    takesOneStatement(() -> finder.about(slate));
    assertEquals(
        TalkLimits.PAGE,
        finder.find(EntryKind.QUESTION, "halo", false, Part.page(30)).rows().size());
    assertEquals(TalkLimits.BESIDE, finder.about(slate).size());
  }

  @Test
  void aYearOfChangesIsHeldAgainstFiveThousandWatchesInBoundedSteps() {
    int most = STEP + 2 * (YearOfTalk.MEMBERS / TalkLimits.WATCH_BATCH);
    for (int step = 0; step < 4; step++) {
      List<String> statements = StatementCount.of(() -> assertTrue(matcher.matchSome()));
      assertTrue(
          statements.size() <= most,
          () -> statements.size() + ":\n" + String.join("\n", statements));
    }
  }
}
