package club.emberwell.desk.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.desk.Cast;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.flag.Flag;
import club.emberwell.desk.flag.Flags;
import club.emberwell.desk.rule.Rule;
import club.emberwell.desk.rule.Rules;
import club.emberwell.entry.Decision;
import club.emberwell.entry.Entries;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Verdict;
import club.emberwell.entry.Verdicts;
import club.emberwell.launch.StatementCount;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.remark.EntryChanged;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import club.emberwell.report.ReportService;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** First looks, flags, decisions, bans and the first screen. */
@QuarkusTest
class DeskServiceTest {
  @Inject Cast cast;
  @Inject Desk desk;
  @Inject EntryLife life;
  @Inject Entries entries;
  @Inject Verdicts verdicts;
  @Inject Flags flags;
  @Inject People people;
  @Inject Rules rules;
  @Inject Reminder reminder;
  @Inject ReportService reports;

  private EntryState state(EntryRef ref) {
    return entries.get(ref).state();
  }

  /** The first look as a club outside tests has it. */
  private void withFirstLook(double entries, Runnable work) {
    Actor owner = cast.person(Role.OWNER);
    set(owner, entries);
    try {
      work.run();
    } finally {
      set(owner, 0);
    }
  }

  private void set(Actor owner, double entries) {
    Rule rule = rules.one(owner, "first-look");
    rules.set(owner, "first-look", Rule.HOLD, entries, null, rule.version());
  }

  @Test
  void theFirstEntriesOfANewMemberWaitUntilEnoughWereAccepted() {
    Actor author = cast.member();
    Actor moderator = cast.moderator();
    withFirstLook(
        2,
        () -> {
          EntryRef report = cast.report(author);
          EntryRef question = cast.question(author, "Which speed for maple, please?");
          assertEquals(EntryState.WAITING, state(report));
          assertEquals(EntryState.WAITING, state(question));
          // its author sees it meanwhile, nobody else does
          assertEquals(report.id(), reports.get(author, report.id()).snapshot().id());
          Actor other = cast.member();
          assertThrows(EntryUnknown.class, () -> reports.get(other, report.id()));
          life.decide(moderator, report, Decision.APPROVE, null);
          assertEquals(EntryState.LIVE, state(report));
          assertEquals(EntryState.WAITING, state(cast.report(author)));
          life.decide(moderator, question, Decision.APPROVE, "");
          assertEquals(EntryState.LIVE, state(cast.report(author)));
          assertEquals(EntryState.LIVE, state(cast.report(cast.moderator())));
          Actor trusted = cast.member();
          people.trust(moderator, trusted.memberId(), true);
          assertEquals(EntryState.LIVE, state(cast.report(trusted)));
          people.trust(moderator, trusted.memberId(), false);
          assertEquals(EntryState.LIVE, state(report));
          assertEquals(EntryState.WAITING, state(cast.report(cast.member())));
        });
  }

  @Test
  void nobodyDecidesAboutTheirOwnAndEveryDecisionNeedsAReason() {
    Actor moderator = cast.moderator();
    EntryRef own = cast.report(moderator);
    assertThrows(EntryForbidden.class, () -> life.decide(moderator, own, Decision.REMOVE, "mine"));
    EntryRef other = cast.report(cast.member());
    assertThrows(EntryRefused.class, () -> life.decide(moderator, other, Decision.REMOVE, " "));
    assertThrows(
        EntryForbidden.class, () -> life.decide(cast.member(), other, Decision.HOLD, "no"));
    assertThrows(EntryForbidden.class, () -> life.decide(moderator, other, Decision.APPROVE, "no"));
  }

  @Test
  void anAuthorReadsWhyAndNobodyElseDoes() {
    Actor author = cast.member();
    Actor moderator = cast.moderator();
    EntryRef report = cast.report(author);
    life.decide(moderator, report, Decision.HOLD, "Which lens was it?");
    assertEquals(EntryState.HELD, state(report));
    assertEquals("Which lens was it?", verdicts.lastWord(author, report).orElseThrow().reason());
    assertTrue(verdicts.lastWord(cast.member(), report).isEmpty());
    life.decide(moderator, report, Decision.RESTORE, "Settled.");
    life.decide(moderator, report, Decision.RESTORE, "Settled again.");
    assertEquals(EntryState.LIVE, state(report));
    List<Verdict> told = verdicts.mine(author, 30);
    assertEquals(
        List.of("Settled.", "Which lens was it?"), told.stream().map(Verdict::reason).toList());
  }

  @Test
  void aFlagIsOnePerMemberAndItemAndItsOutcomeIsTold() {
    Actor author = cast.member();
    Actor flagger = cast.member();
    Actor moderator = cast.moderator();
    EntryRef report = cast.report(author);
    Flag flag = flags.flag(flagger, report, "wrong-numbers", "Ten times too fast.");
    assertEquals(flag.id(), flags.flag(flagger, report, "spam", null).id());
    assertThrows(EntryForbidden.class, () -> flags.flag(author, report, "spam", null));
    assertThrows(EntryRefused.class, () -> flags.flag(cast.member(), report, "boring", null));
    assertThrows(EntryUnknown.class, () -> flags.withdraw(cast.member(), flag.id()));
    flags.withdraw(flagger, flag.id());
    assertThrows(
        EntryUnknown.class, () -> flags.settle(moderator, report, true, null, "nothing there"));
    flags.flag(flagger, report, "wrong-numbers", null);
    assertEquals(1, flags.on(moderator, report).size());
    assertEquals(1, flags.settle(moderator, report, true, Decision.HOLD, "Right you are."));
    assertEquals(EntryState.HELD, state(report));
    Flag told = flags.mine(flagger, Part.FIRST).rows().get(0);
    assertEquals("upheld", told.state());
    assertEquals("Right you are.", told.outcome());
    life.decide(moderator, report, Decision.RESTORE, "Mended.");
    assertThrows(EntryRefused.class, () -> flags.flag(flagger, report, "spam", null));
  }

  @Test
  void someFlagsAreForAnOwnerToSettle() {
    EntryRef report = cast.report(cast.member());
    flags.flag(cast.member(), report, "personal-data", null);
    assertThrows(
        EntryForbidden.class,
        () -> flags.settle(cast.moderator(), report, false, null, "Looks fine to me."));
    assertEquals(0, flags.settle(cast.moderator(), report, true, Decision.HOLD, "Held for now."));
    assertEquals(1, flags.on(cast.moderator(), report).size());
    assertEquals(
        1,
        flags.settle(cast.person(Role.OWNER), report, true, Decision.REMOVE, "Removed for good."));
  }

  @Test
  void aMemberHasSoManyFlagsOpenAndNoMore() {
    Actor flagger = cast.member();
    Actor author = cast.member();
    for (int i = 0; i < DeskLimits.OPEN_FLAGS; i++) {
      flags.flag(flagger, cast.report(author), "off-topic", null);
    }
    EntryRef next = cast.report(author);
    assertThrows(EntryRefused.class, () -> flags.flag(flagger, next, "off-topic", null));
  }

  @Test
  void bansAreForThoseBelow() {
    Actor moderator = cast.moderator();
    Actor owner = cast.person(Role.OWNER);
    Actor member = cast.member();
    assertThrows(EntryForbidden.class, () -> people.ban(moderator, moderator.memberId(), "me"));
    assertThrows(EntryForbidden.class, () -> people.ban(moderator, owner.memberId(), "owner"));
    assertThrows(
        EntryForbidden.class,
        () -> people.ban(moderator, cast.moderator().memberId(), "a colleague"));
    assertThrows(EntryForbidden.class, () -> people.ban(member, moderator.memberId(), "no"));
    assertThrows(EntryRefused.class, () -> people.ban(moderator, member.memberId(), ""));
    people.ban(moderator, member.memberId(), "Spam in bulk.");
    assertTrue(people.one(moderator, member.memberId()).banned());
    people.unban(moderator, member.memberId(), "A mistake.");
    assertFalse(people.one(moderator, member.memberId()).banned());
    people.ban(owner, moderator.memberId(), "Banned a member by mistake.");
  }

  @Test
  void aRuleIsSetWithinItsBoundsAndOverWhatWasRead() {
    Actor moderator = cast.moderator();
    Rule burst = rules.one(moderator, "burst");
    assertEquals(Rule.NOTE, burst.mode(), "every rule begins with a note");
    List<Supplier<Rule>> refused =
        List.of(
            () -> rules.set(moderator, "burst", "shout", 5.0, 5, burst.version()),
            () -> rules.set(moderator, "burst", "note", -1.0, 5, burst.version()),
            () -> rules.set(moderator, "burst", "note", null, 5, burst.version()),
            () -> rules.set(moderator, "burst", "note", Double.NaN, 5, burst.version()),
            () -> rules.set(moderator, "burst", "note", 5.0, 0, burst.version()));
    refused.forEach(set -> assertThrows(EntryRefused.class, set::get));
    assertThrows(
        EntryChanged.class,
        () -> rules.set(moderator, "burst", "note", 5.0, 5, burst.version() + 1));
  }

  @Test
  void theReminderGoesOncePerPeriodAndOnlyWhenSomethingWaitsTooLong() {
    Actor author = cast.member();
    Actor moderator = cast.moderator();
    withFirstLook(
        1,
        () -> {
          EntryRef report = cast.report(author);
          Instant later = Instant.now().plus(Duration.ofHours(50));
          int letters = reminderAt(later);
          assertTrue(letters > 0);
          assertEquals(0, reminderAt(later.plusSeconds(60)));
          assertTrue(reminderAt(later.plus(Duration.ofHours(25))) > 0);
          life.decide(moderator, report, Decision.APPROVE, null);
        });
    cast.run("update desk_progress set reminded_at = null");
  }

  private int reminderAt(Instant now) {
    return io.quarkus.narayana.jta.QuarkusTransaction.requiringNew()
        .call(() -> reminder.remind(now));
  }

  @Test
  void theFirstScreenIsABoundedNumberOfStatements() {
    Actor moderator = cast.moderator();
    desk.home(moderator);
    assertEquals(7, StatementCount.of(() -> desk.home(moderator)).size());
    assertEquals(1, StatementCount.of(() -> desk.waiting(moderator, Part.page(3))).size());
    assertThrows(EntryForbidden.class, () -> desk.home(cast.member()));
  }
}
