package club.emberwell.talk;

import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Gone;
import club.emberwell.entry.Origin;
import club.emberwell.entry.Revision;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

@QuarkusTest
class TalkServiceTest {
  private static final Actor STRANGER = new Actor(null, "", Role.READER, UnitPreferences.metric());

  @Inject TalkService talk;
  @Inject AcceptedAnswers accepted;
  @Inject TalkFinder finder;
  @Inject EntryLife life;
  @Inject ChangeLog changes;
  @Inject Club club;

  private Actor ada;
  private Actor ben;
  private Actor moderator;

  @BeforeEach
  void people() {
    ada = club.member();
    ben = club.member();
    moderator = club.person(Role.MODERATOR);
  }

  private TalkEntry ask() {
    return talk.post(
            ada,
            EntryKind.QUESTION,
            Club.posting("Pale marks on slate", "They fade after **oil**.", Club.about("slate")))
        .entry();
  }

  private TalkEntry answer(TalkEntry question) {
    return talk.answer(
            ben, question.id(), TalkPosting.of(null, WrittenTalk.untitled("Slow down, then oil.")))
        .entry();
  }

  @Test
  void aQuestionIsReadByStrangersWithItsTiesAsSlugs() {
    TalkEntry read = talk.get(STRANGER, ask().id());
    assertEquals("Pale marks on slate", read.written().title());
    assertEquals("slate", read.written().ties().material());
    assertEquals(ada.handle(), read.memberHandle());
    assertEquals(1, read.version());
    assertTrue(read.html().getMarkup().contains("<strong>oil</strong>"));
  }

  @Test
  void anotherSpellingOfAMaterialBecomesItsSlug() {
    Ties ties = new Ties("Birch Ply", "powdercoat", "Fibre", "coating removal", "", " ", null);
    Ties read =
        talk.post(ada, EntryKind.NOTICE, Club.posting("A notice of ties", "text", ties))
            .entry()
            .written()
            .ties();
    assertEquals("birch-plywood", read.material());
    assertEquals("powder-coat", read.coating());
    assertEquals("fibre", read.source());
    assertEquals("coating-removal", read.process());
    assertNull(read.machineModel());
    assertNull(read.controllerVersion());
  }

  static Stream<Arguments> misfits() {
    String title = "A good long title";
    return Stream.of(
        Arguments.of(null, "text", null, "/title"),
        Arguments.of("short", "text", null, "/title"),
        Arguments.of("x".repeat(TalkLimits.TITLE + 1), "text", null, "/title"),
        Arguments.of("Two\nlines in a title", "text", null, "/title"),
        Arguments.of("Turned \u202e around title", "text", null, "/title"),
        Arguments.of("Half \ud83d a character", "text", null, "/title"),
        Arguments.of(title, null, null, "/text"),
        Arguments.of(title, "  \n ", null, "/text"),
        Arguments.of(title, "nul \u0000", null, "/text"),
        Arguments.of(title, "text", "unobtainium of nowhere", "/ties/material"));
  }

  @ParameterizedTest
  @MethodSource("misfits")
  void whatDoesNotFitIsRefusedAtItsField(
      String title, String text, String material, String pointer) {
    EntryRefused refused =
        assertThrows(
            EntryRefused.class,
            () ->
                talk.post(
                    ada, EntryKind.QUESTION, Club.posting(title, text, Club.about(material))));
    assertEquals(pointer, refused.remarks().get(0).field());
  }

  @Test
  void everyTieIsCheckedAtItsPlace() {
    Ties ties =
        new Ties(
            "x".repeat(400),
            "nowhere coat",
            "maser",
            "melting",
            "m".repeat(81),
            "v".repeat(81),
            UUID.randomUUID());
    EntryRefused refused =
        assertThrows(
            EntryRefused.class,
            () -> talk.post(ada, EntryKind.NOTICE, Club.posting("A good long title", "t", ties)));
    assertEquals(
        List.of(
            "/ties/material",
            "/ties/coating",
            "/ties/source",
            "/ties/process",
            "/ties/machineModel",
            "/ties/controllerVersion",
            "/ties/report"),
        refused.remarks().stream().map(r -> r.field()).toList());
  }

  @Test
  void theLongestTextFitsAndOneCharacterMoreDoesNot() {
    String most = "\ud83d\udd25".repeat(TalkLimits.TEXT);
    talk.post(ada, EntryKind.NOTICE, Club.posting("A good long title", most, Ties.NONE));
    assertThrows(
        EntryRefused.class,
        () ->
            talk.post(
                ada, EntryKind.NOTICE, Club.posting("A good long title", most + "x", Ties.NONE)));
  }

  @Test
  void anAnswerCountsAndTheAskerSaysWhichOneHelpedAndMayChangeTheirMind() {
    TalkEntry question = ask();
    TalkEntry first = answer(question);
    TalkEntry second =
        talk.answer(
                moderator,
                question.id(),
                TalkPosting.of(null, WrittenTalk.untitled("Try a coat of paint first.")))
            .entry();
    assertEquals(2, talk.get(STRANGER, question.id()).answers());
    accepted.accept(ada, question.id(), second.id(), null);
    assertEquals(
        List.of(second.id(), first.id()),
        talk.thread(STRANGER, question.id(), Part.FIRST).answers().rows().stream()
            .map(TalkEntry::id)
            .toList());
    assertEquals(first.id(), accepted.accept(ada, question.id(), first.id(), null).accepted());
    assertNull(accepted.accept(ada, question.id(), null, null).accepted());
    assertThrows(EntryForbidden.class, () -> accepted.accept(ben, question.id(), first.id(), null));
    assertThrows(
        EntryForbidden.class, () -> accepted.accept(moderator, question.id(), first.id(), null));
    TalkEntry elsewhere = answer(ask());
    assertThrows(
        EntryUnknown.class, () -> accepted.accept(ada, question.id(), elsewhere.id(), null));
  }

  @Test
  void anAcceptedAnswerThatGoesIsAcceptedNoMore() {
    TalkEntry question = ask();
    TalkEntry answer = answer(question);
    accepted.accept(ada, question.id(), answer.id(), null);
    talk.withdraw(ben, answer.id(), null);
    TalkEntry after = talk.get(STRANGER, question.id());
    assertNull(after.accepted());
    assertEquals(0, after.answers());
    assertThrows(Gone.class, () -> talk.get(STRANGER, answer.id()));
  }

  @Test
  void anEditNeedsTheVersionThatWasReadAndKeepsBoth() {
    TalkEntry question = ask();
    WrittenTalk better = new WrittenTalk("Pale marks on slate", "They fade.", Ties.NONE);
    TalkEntry edited = talk.revise(ada, question.id(), 1, better, "shorter");
    assertEquals(2, edited.version());
    EntryChanged late =
        assertThrows(EntryChanged.class, () -> talk.revise(ada, question.id(), 1, better, null));
    assertEquals(2, late.version());
    assertThrows(EntryForbidden.class, () -> talk.revise(ben, question.id(), 2, better, null));
    List<Revision<WrittenTalk>> history = talk.history(STRANGER, question.id());
    assertEquals(2, history.size());
    assertEquals("shorter", history.get(0).reason());
    assertEquals("They fade after **oil**.", history.get(1).written().text());
  }

  @Test
  void theSameIdWithTheSameWordsIsOneEntryAndWithOthersIsRefused() {
    UUID id = UUID.randomUUID();
    WrittenTalk written = new WrittenTalk("A title of its own", "text", Ties.NONE);
    assertTrue(talk.post(ada, EntryKind.NOTICE, TalkPosting.of(id, written)).created());
    assertFalse(talk.post(ada, EntryKind.NOTICE, TalkPosting.of(id, written)).created());
    WrittenTalk other = new WrittenTalk("A title of its own", "other", Ties.NONE);
    assertThrows(
        EntryRefused.class, () -> talk.post(ada, EntryKind.NOTICE, TalkPosting.of(id, other)));
    assertThrows(
        EntryRefused.class, () -> talk.post(ben, EntryKind.NOTICE, TalkPosting.of(id, written)));
  }

  @Test
  void heldIsUnknownToOthersRemovedIsGoneAndRestoredIsBack() {
    TalkEntry question = ask();
    assertThrows(
        EntryForbidden.class, () -> life.decide(ada, question.entry().ref(), Decision.HOLD, "no"));
    assertThrows(
        EntryRefused.class,
        () -> life.decide(moderator, question.entry().ref(), Decision.HOLD, " "));
    life.decide(moderator, question.entry().ref(), Decision.HOLD, "needs a look");
    assertThrows(EntryUnknown.class, () -> talk.get(ben, question.id()));
    assertEquals(EntryState.HELD, talk.get(ada, question.id()).state());
    assertThrows(EntryUnknown.class, () -> answer(question));
    life.decide(moderator, question.entry().ref(), Decision.REMOVE, "spam");
    assertThrows(Gone.class, () -> talk.get(ben, question.id()));
    life.decide(moderator, question.entry().ref(), Decision.RESTORE, "a mistake");
    assertEquals(EntryState.LIVE, talk.get(STRANGER, question.id()).state());
    assertEquals("a mistake", talk.history(ada, question.id()).get(0).reason());
  }

  @Test
  void noModeratorDecidesAboutTheirOwnEntry() {
    TalkEntry own =
        talk.post(
                moderator,
                EntryKind.NOTICE,
                Club.posting("Extraction serviced", "Filters are new.", Ties.NONE))
            .entry();
    assertThrows(
        EntryForbidden.class,
        () -> life.decide(moderator, own.entry().ref(), Decision.REMOVE, "changed my mind"));
  }

  @Test
  void everyWriteLeavesOneChangeRow() {
    ChangeLog.Position start = changes.head().last().position();
    TalkEntry question = ask();
    talk.revise(ada, question.id(), 1, question.written(), null);
    talk.withdraw(ada, question.id(), 2);
    talk.withdraw(ada, question.id(), 2);
    assertEquals(3, changesOf(question.id(), start));
  }

  /** Once they can be read: what else runs in the database may hold change rows back a little. */
  private long changesOf(UUID id, ChangeLog.Position start) {
    return await()
        .atMost(Duration.ofSeconds(30))
        .pollInterval(Duration.ofMillis(20))
        .until(
            () -> changes.since(start, 1000).stream().filter(c -> c.id().equals(id)).count(),
            mine -> mine > 0);
  }

  @Test
  void aDaysPaceIsLimited() {
    Actor eager = club.member();
    for (int i = 0; i < TalkLimits.PACE; i++) {
      talk.post(eager, EntryKind.NOTICE, Club.posting("Notice number " + i, "text", Ties.NONE));
    }
    assertThrows(
        EntryRefused.class,
        () -> talk.post(eager, EntryKind.NOTICE, Club.posting("One too many", "text", Ties.NONE)));
  }

  @Test
  void anAnswerIsShownOnThePageOnWhichItStandsForThisReader() {
    TalkEntry question = ask();
    List<UUID> answers = new ArrayList<>();
    for (int i = 0; i <= TalkLimits.ANSWERS; i++) {
      answers.add(answer(question).id());
    }
    UUID last = answers.get(TalkLimits.ANSWERS);
    assertEquals(1, pageOf(STRANGER, question, last));
    assertEquals(0, pageOf(STRANGER, question, answers.get(TalkLimits.ANSWERS - 1)));
    assertEquals(3, StatementCount.of(() -> pageOf(STRANGER, question, last)).size());
    life.decide(
        moderator, new EntryRef(EntryKind.ANSWER, answers.get(0)), Decision.HOLD, "needs a look");
    assertEquals(0, pageOf(STRANGER, question, last), "one is out of sight");
    assertEquals(1, pageOf(moderator, question, last), "moderators see it");
    assertEquals(0, pageOf(STRANGER, question, answers.get(0)), "the first page instead");
    life.decide(
        moderator,
        new EntryRef(EntryKind.ANSWER, answers.get(0)),
        Decision.RESTORE,
        "nothing wrong");
    accepted.accept(ada, question.id(), last, null);
    assertEquals(0, pageOf(STRANGER, question, last), "accepted stands first");
    assertEquals(1, pageOf(STRANGER, question, answers.get(TalkLimits.ANSWERS - 1)));
    assertEquals(0, talk.threadAt(ada, question.id(), ask().id()).answers().page());
  }

  private int pageOf(Actor reader, TalkEntry question, UUID answer) {
    return talk.threadAt(reader, question.id(), answer).answers().page();
  }

  @Test
  void listsStandByTheDateOfTheLastAnswerWhateverCameInFirst() {
    Actor writer = club.member();
    TalkEntry young = at(writer, EntryKind.QUESTION, null, "2019-03-03T10:00:00Z");
    TalkEntry old = at(writer, EntryKind.QUESTION, null, "2019-01-01T10:00:00Z");
    TalkEntry middle = at(writer, EntryKind.QUESTION, null, "2019-02-02T10:00:00Z");
    assertEquals(List.of(young.id(), middle.id(), old.id()), listed(young, old, middle));
    TalkEntry second = at(writer, EntryKind.ANSWER, old.id(), "2019-04-05T10:00:00Z");
    TalkEntry first = at(writer, EntryKind.ANSWER, old.id(), "2019-04-04T10:00:00Z");
    assertEquals(List.of(old.id(), young.id(), middle.id()), listed(young, old, middle));
    assertEquals(second.createdAt(), talk.get(ada, old.id()).activeAt());
    assertEquals(
        List.of(old.id(), first.id(), second.id()), talk.thread(ada, old.id(), Part.FIRST).ids());
  }

  private TalkEntry at(Actor writer, EntryKind kind, UUID question, String when) {
    boolean answers = kind == EntryKind.ANSWER;
    WrittenTalk written =
        answers
            ? WrittenTalk.untitled("Text")
            : new WrittenTalk("A question of " + when, "t", Ties.NONE);
    TalkPosting posting = new TalkPosting(null, written, Origin.HERE, Instant.parse(when));
    return (answers ? talk.answer(writer, question, posting) : talk.post(writer, kind, posting))
        .entry();
  }

  /** These of the list, in its order. */
  private List<UUID> listed(TalkEntry... wanted) {
    List<UUID> ids = Stream.of(wanted).map(TalkEntry::id).toList();
    List<UUID> found = new ArrayList<>();
    for (int page = 0; found.size() < wanted.length; page++) {
      Slice<TalkEntry> some = finder.find(EntryKind.QUESTION, "", false, Part.page(page));
      some.rows().stream().map(TalkEntry::id).filter(ids::contains).forEach(found::add);
      assertTrue(some.more() || found.size() == wanted.length, "not all are listed");
    }
    return found;
  }

  @Test
  void aListIsOneStatementAndAThreadTwoWhateverTheirSize() {
    TalkEntry question = ask();
    for (int i = 0; i < 5; i++) {
      answer(question);
    }
    assertEquals(
        1, StatementCount.of(() -> finder.find(EntryKind.QUESTION, "", false, Part.FIRST)).size());
    assertEquals(2, StatementCount.of(() -> talk.thread(ada, question.id(), Part.FIRST)).size());
    assertTrue(
        finder.find(EntryKind.QUESTION, "", true, Part.FIRST).rows().stream()
            .noneMatch(entry -> entry.id().equals(question.id())));
  }
}
