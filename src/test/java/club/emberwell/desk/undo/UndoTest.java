package club.emberwell.desk.undo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.desk.Cast;
import club.emberwell.desk.flag.Flags;
import club.emberwell.desk.home.People;
import club.emberwell.desk.rule.Rule;
import club.emberwell.desk.rule.RuleRunner;
import club.emberwell.desk.rule.Rules;
import club.emberwell.desk.undo.Undos.Wanted;
import club.emberwell.entry.Decision;
import club.emberwell.entry.Entries;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.EntryState;
import club.emberwell.entry.Origin;
import club.emberwell.entry.Verdicts;
import club.emberwell.listing.Part;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.Posting;
import club.emberwell.report.ReportService;
import club.emberwell.report.reading.WorkProperty;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Undoing everything somebody or something did since a time, and undoing that. */
@QuarkusTest
class UndoTest {
  @Inject Cast cast;
  @Inject Undos undos;
  @Inject UndoWork work;
  @Inject EntryLife life;
  @Inject Entries entries;
  @Inject Verdicts verdicts;
  @Inject Flags flags;
  @Inject People people;
  @Inject Rules rules;
  @Inject RuleRunner runner;
  @Inject ReportService reports;

  private EntryState state(EntryRef ref) {
    return entries.get(ref).state();
  }

  private String notes(EntryRef ref) {
    return reports.get(cast.moderator(), ref.id()).written().work().text(WorkProperty.NOTES);
  }

  private void edit(Actor by, EntryRef ref, String notes) {
    int version = reports.get(by, ref.id()).snapshot().version();
    reports.revise(
        by,
        ref.id(),
        version,
        new Posting(
            null,
            Cast.written("maple", "400 mm/s", notes),
            NumberStyle.ANY,
            Origin.HERE,
            null,
            false),
        null);
  }

  @Test
  void whatAMemberDidSinceATimeIsUndoneAndTheUndoIsUndone() {
    Actor vandal = cast.member();
    Actor moderator = cast.moderator();
    EntryRef old = cast.report(vandal, "maple", "400 mm/s", "As it was.");
    EntryRef stranger = cast.report(cast.member());
    Instant since = Instant.now();
    EntryRef fresh = cast.report(vandal);
    EntryRef question = cast.question(vandal, "Buy my blanks, will you?");
    edit(vandal, old, "Defaced.");
    edit(vandal, old, "Defaced twice.");
    flags.flag(vandal, stranger, "spam", null);

    Wanted wanted = new Wanted(vandal.memberId(), null, since);
    UndoPlan plan = undos.preview(moderator, wanted);
    assertEquals(4, plan.total());
    assertEquals(4, plan.first().size());

    UUID id = UUID.randomUUID();
    UndoRun run = undos.start(moderator, id, wanted, "A spree.");
    assertEquals("done", run.state());
    assertEquals(4, run.done());
    assertEquals(0, run.skipped());
    assertEquals(EntryState.REMOVED, state(fresh));
    assertEquals(EntryState.REMOVED, state(question));
    assertEquals(EntryState.LIVE, state(old));
    assertEquals("As it was.", notes(old));
    assertEquals(EntryState.LIVE, state(stranger));
    assertEquals("withdrawn", flags.mine(vandal, Part.FIRST).rows().get(0).state());
    assertEquals("A spree.", verdicts.lastWord(vandal, fresh).orElseThrow().reason());

    // the same once more is the same undo
    assertEquals(4, undos.start(moderator, id, wanted, "A spree.").total());
    assertEquals(0, undos.preview(moderator, wanted).total());

    assertEquals("restored", undos.restore(moderator, id).state());
    assertEquals(EntryState.LIVE, state(fresh));
    assertEquals(EntryState.LIVE, state(question));
    assertEquals("Defaced twice.", notes(old));
    assertEquals("open", flags.mine(vandal, Part.FIRST).rows().get(0).state());
    assertEquals("restored", undos.restore(moderator, id).state());
  }

  @Test
  void whatAnAuthorWithdrewMeanwhileIsSkippedAndTheRestIsDone() {
    Actor member = cast.member();
    Actor moderator = cast.moderator();
    Instant since = Instant.now();
    EntryRef one = cast.report(member);
    EntryRef two = cast.report(member);
    cast.run("update entry set state = 'withdrawn' where id = '%s'".formatted(one.id()));
    UUID id = UUID.randomUUID();
    assertEquals(1, undos.preview(moderator, new Wanted(member.memberId(), null, since)).total());
    cast.run("update entry set state = 'live' where id = '%s'".formatted(one.id()));
    cast.run(
        ("insert into desk_undo (id, member_id, since, reason, state, started_by,"
                + " started_at) values ('%s', '%s', now(), 'A test.', 'running', '%s',"
                + " now())")
            .formatted(id, member.memberId(), moderator.memberId()));
    for (EntryRef ref : new EntryRef[] {one, two}) {
      cast.run(
          ("insert into desk_undo_item (run_id, step, kind, item_id, was, back_to)"
                  + " values ('%s', 'remove', 'report', '%s', 'live', 0)")
              .formatted(id, ref.id()));
    }
    reports.withdraw(member, one.id(), null);
    work.some(id, 10);
    UndoRun run = undos.one(moderator, id);
    assertEquals("done", run.state());
    assertEquals(1, run.skipped());
    assertEquals(EntryState.WITHDRAWN, state(one));
    assertEquals(EntryState.REMOVED, state(two));
  }

  @Test
  void aLargeUndoGoesOnInTheBackgroundWhereItWas() {
    Actor member = cast.member();
    Actor moderator = cast.moderator();
    Instant since = Instant.now();
    for (int i = 0; i < 7; i++) {
      cast.report(member);
    }
    UUID id = UUID.randomUUID();
    cast.run(
        ("insert into desk_undo (id, member_id, since, reason, state, started_by,"
                + " started_at) values ('%s', '%s', now(), 'A test.', 'running', '%s',"
                + " now())")
            .formatted(id, member.memberId(), moderator.memberId()));
    cast.run(
        ("insert into desk_undo_item (run_id, step, kind, item_id, was, back_to) select"
                + " '%s', 'remove', 'report', id, state, 0 from entry where member_id = '%s'"
                + " and created_at >= '%s'")
            .formatted(id, member.memberId(), since));
    work.some(id, 3);
    work.some(id, 100);
    assertEquals(7, undos.one(moderator, id).done());
    assertEquals(0, undos.preview(moderator, new Wanted(member.memberId(), null, since)).total());
  }

  @Test
  void whatAModeratorDecidedIsUndoneByAnOwnerOnly() {
    Actor rogue = cast.moderator();
    Actor owner = cast.person(Role.OWNER);
    Actor victim = cast.member();
    EntryRef report = cast.report(victim);
    Instant since = Instant.now();
    life.decide(rogue, report, Decision.REMOVE, "I do not like it.");
    people.ban(rogue, victim.memberId(), "Nor this member.");
    Wanted wanted = new Wanted(rogue.memberId(), null, since);
    assertThrows(EntryForbidden.class, () -> undos.preview(cast.moderator(), wanted));
    assertThrows(EntryForbidden.class, () -> undos.preview(rogue, wanted));
    assertEquals(2, undos.preview(owner, wanted).total());
    undos.start(owner, UUID.randomUUID(), wanted, "Not for such reasons.");
    assertEquals(EntryState.LIVE, state(report));
    assertTrue(!people.one(owner, victim.memberId()).banned());
  }

  @Test
  void whatARuleHeldIsReleasedAndNotHeldAgain() {
    Actor moderator = cast.moderator();
    while (runner.some()) {
      Thread.onSpinWait();
    }
    Instant since = Instant.now();
    Rule rule = rules.one(moderator, "newcomer-links");
    rules.set(moderator, "newcomer-links", Rule.HOLD, 5.0, null, rule.version());
    try {
      EntryRef question = cast.question(cast.member(), "Look at https://blanks.example/ for more.");
      EntryRef clean = cast.question(cast.member(), "No link in this one at all.");
      awaitState(question, EntryState.HELD);
      assertEquals(EntryState.LIVE, state(clean));
      assertEquals(1, rules.on(moderator, question).size());
      Wanted wanted = new Wanted(null, "newcomer-links", since);
      assertEquals(2, undos.preview(moderator, wanted).total());
      undos.start(moderator, UUID.randomUUID(), wanted, "Too strict.");
      assertEquals(EntryState.LIVE, state(question));
      runner.some();
      assertEquals(EntryState.LIVE, state(question));
    } finally {
      Rule now = rules.one(moderator, "newcomer-links");
      rules.set(moderator, "newcomer-links", Rule.NOTE, 5.0, null, now.version());
    }
  }

  private void awaitState(EntryRef ref, EntryState wanted) {
    Instant end = Instant.now().plusSeconds(20);
    while (state(ref) != wanted && Instant.now().isBefore(end)) {
      runner.some();
    }
    assertEquals(wanted, state(ref));
  }

  @Test
  void anUndoNeedsOneSubjectATimeThatPassedAndAReason() {
    Actor moderator = cast.moderator();
    Actor member = cast.member();
    Instant now = Instant.now();
    assertThrows(EntryRefused.class, () -> undos.preview(moderator, new Wanted(null, null, now)));
    assertThrows(
        EntryRefused.class,
        () -> undos.preview(moderator, new Wanted(member.memberId(), "burst", now)));
    assertThrows(
        EntryRefused.class, () -> undos.preview(moderator, new Wanted(null, "nothing", now)));
    assertThrows(
        EntryRefused.class,
        () -> undos.preview(moderator, new Wanted(member.memberId(), null, now.plusSeconds(3600))));
    assertThrows(
        EntryRefused.class,
        () -> undos.preview(moderator, new Wanted(UUID.randomUUID(), null, now)));
    assertThrows(
        EntryRefused.class,
        () ->
            undos.start(
                moderator, UUID.randomUUID(), new Wanted(member.memberId(), null, now), " "));
  }
}
