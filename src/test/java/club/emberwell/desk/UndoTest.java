package club.emberwell.desk;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.desk.Undos.Wanted;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.Origin;
import club.emberwell.report.Posting;
import club.emberwell.report.ReportService;
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
  @Inject Decisions decisions;
  @Inject Flags flags;
  @Inject People people;
  @Inject Rules rules;
  @Inject RuleRunner runner;
  @Inject ReportService reports;

  private String state(ItemRef ref) {
    return decisions.item(cast.moderator(), ref).state();
  }

  private String notes(ItemRef ref) {
    return reports.get(cast.moderator(), ref.id()).written().particulars().notes();
  }

  private void edit(Actor by, ItemRef ref, String notes) {
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
    ItemRef old = cast.report(vandal, "maple", "400 mm/s", "As it was.");
    ItemRef stranger = cast.report(cast.member());
    Instant since = Instant.now();
    ItemRef fresh = cast.report(vandal);
    ItemRef question = cast.question(vandal, "Buy my blanks, will you?");
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
    assertEquals("REMOVED", state(fresh));
    assertEquals("REMOVED", state(question));
    assertEquals("LIVE", state(old));
    assertEquals("As it was.", notes(old));
    assertEquals("LIVE", state(stranger));
    assertEquals("withdrawn", flags.mine(vandal, 0).rows().get(0).state());
    assertEquals("A spree.", decisions.lastWord(vandal, fresh).orElseThrow().reason());

    // the same once more is the same undo
    assertEquals(4, undos.start(moderator, id, wanted, "A spree.").total());
    assertEquals(0, undos.preview(moderator, wanted).total());

    assertEquals("restored", undos.restore(moderator, id).state());
    assertEquals("LIVE", state(fresh));
    assertEquals("LIVE", state(question));
    assertEquals("Defaced twice.", notes(old));
    assertEquals("open", flags.mine(vandal, 0).rows().get(0).state());
    assertEquals("restored", undos.restore(moderator, id).state());
  }

  @Test
  void whatAnAuthorWithdrewMeanwhileIsSkippedAndTheRestIsDone() {
    Actor member = cast.member();
    Actor moderator = cast.moderator();
    Instant since = Instant.now();
    ItemRef one = cast.report(member);
    ItemRef two = cast.report(member);
    cast.run("update report set state = 'WITHDRAWN' where id = '%s'".formatted(one.id()));
    UUID id = UUID.randomUUID();
    assertEquals(1, undos.preview(moderator, new Wanted(member.memberId(), null, since)).total());
    cast.run("update report set state = 'LIVE' where id = '%s'".formatted(one.id()));
    cast.run(
        ("insert into desk_undo (id, subject, member_id, since, reason, state, started_by,"
                + " started_at) values ('%s', 'member', '%s', now(), 'A test.', 'running', '%s',"
                + " now())")
            .formatted(id, member.memberId(), moderator.memberId()));
    for (ItemRef ref : new ItemRef[] {one, two}) {
      cast.run(
          ("insert into desk_undo_item (run_id, step, kind, item_id, title, was, back_to)"
                  + " values ('%s', 'remove', 'report', '%s', 'x', 'LIVE', 0)")
              .formatted(id, ref.id()));
    }
    reports.withdraw(member, one.id(), null);
    work.some(id, 10);
    UndoRun run = undos.one(moderator, id);
    assertEquals("done", run.state());
    assertEquals(1, run.skipped());
    assertEquals("WITHDRAWN", state(one));
    assertEquals("REMOVED", state(two));
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
        ("insert into desk_undo (id, subject, member_id, since, reason, state, started_by,"
                + " started_at) values ('%s', 'member', '%s', now(), 'A test.', 'running', '%s',"
                + " now())")
            .formatted(id, member.memberId(), moderator.memberId()));
    cast.run(
        ("insert into desk_undo_item (run_id, step, kind, item_id, title, was, back_to) select"
                + " '%s', 'remove', 'report', id, '', state, 0 from report where member_id = '%s'"
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
    ItemRef report = cast.report(victim);
    Instant since = Instant.now();
    decisions.decide(rogue, report, Action.REMOVE, "I do not like it.");
    people.ban(rogue, victim.memberId(), "Nor this member.");
    Wanted wanted = new Wanted(rogue.memberId(), null, since);
    assertThrows(EntryForbidden.class, () -> undos.preview(cast.moderator(), wanted));
    assertThrows(EntryForbidden.class, () -> undos.preview(rogue, wanted));
    assertEquals(2, undos.preview(owner, wanted).total());
    undos.start(owner, UUID.randomUUID(), wanted, "Not for such reasons.");
    assertEquals("LIVE", state(report));
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
      ItemRef question = cast.question(cast.member(), "Look at https://blanks.example/ for more.");
      ItemRef clean = cast.question(cast.member(), "No link in this one at all.");
      awaitState(question, "HELD");
      assertEquals("LIVE", state(clean));
      assertEquals(1, rules.on(moderator, question).size());
      Wanted wanted = new Wanted(null, "newcomer-links", since);
      assertEquals(2, undos.preview(moderator, wanted).total());
      undos.start(moderator, UUID.randomUUID(), wanted, "Too strict.");
      assertEquals("LIVE", state(question));
      runner.some();
      assertEquals("LIVE", state(question));
    } finally {
      Rule now = rules.one(moderator, "newcomer-links");
      rules.set(moderator, "newcomer-links", Rule.NOTE, 5.0, null, now.version());
    }
  }

  private void awaitState(ItemRef ref, String wanted) {
    Instant end = Instant.now().plusSeconds(20);
    while (!state(ref).equals(wanted) && Instant.now().isBefore(end)) {
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
