package club.emberwell.desk.home;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.catalog.store.CautionCare.Standing;
import club.emberwell.desk.Cast;
import club.emberwell.desk.flag.FlagReason;
import club.emberwell.desk.flag.Flags;
import club.emberwell.desk.word.CautionProposals;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.entry.EntryRef;
import club.emberwell.launch.StatementCount;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Every kind of thing that can wait is among what waits, at its place. */
@QuarkusTest
class TasksTest {
  private static final String CAUTION = "food-hygiene";
  private static final int MOST = 1000;

  @Inject Cast cast;
  @Inject Tasks tasks;
  @Inject Flags flags;
  @Inject CatalogService catalog;
  @Inject VocabularyCare care;
  @Inject CautionProposals proposals;

  private final List<Runnable> after = new ArrayList<>();

  @AfterEach
  void tidy() {
    after.forEach(Runnable::run);
  }

  /** All that waits for somebody, one after the other as their pages lead them. */
  private List<Task> all(Actor actor, String order) {
    List<Task> found = new ArrayList<>();
    Optional<Task> next = tasks.next(actor, order, null);
    while (next.isPresent() && found.size() < MOST) {
      found.add(next.get());
      next = tasks.next(actor, order, Tasks.place(next.get(), order));
    }
    return found;
  }

  private static Task of(List<Task> all, UUID id) {
    return all.stream().filter(task -> task.id().equals(id)).findFirst().orElseThrow();
  }

  private EntryRef flagged(FlagReason... reasons) {
    EntryRef report = cast.report(cast.member());
    for (FlagReason reason : reasons) {
      flags.flag(cast.member(), report, reason.code(), "Odd.");
    }
    return report;
  }

  @Test
  void everyKindWaitsAndIsDecidedSomewhere() {
    somethingOfEachKind();
    Actor owner = cast.person(Role.OWNER);
    List<Task> all = all(owner, "worst");
    Set<TaskKind> kinds = all.stream().map(Task::kind).collect(Collectors.toSet());
    assertEquals(EnumSet.allOf(TaskKind.class), kinds);
    assertEquals(
        all.stream().map(Task::rank).sorted().toList(),
        all.stream().map(Task::rank).toList(),
        "the worst stand first");
    for (Task task : all) {
      assertTrue(task.path().matches("/[a-z]+/[a-z-]+(/[a-z0-9-]+)*"), task.path());
      assertEquals(task.kind() == TaskKind.FLAG, task.rank() < TaskKind.ENTRY.rank());
    }
    assertEquals(
        all.stream().map(Task::id).collect(Collectors.toSet()),
        all(owner, Tasks.OLDEST).stream().map(Task::id).collect(Collectors.toSet()),
        "the same things in either order");
    assertEquals(1, StatementCount.of(() -> tasks.first(owner, "worst")).size());
  }

  private void somethingOfEachKind() {
    flagged(FlagReason.SPAM);
    EntryRef waiting = cast.report(cast.member());
    cast.run("update entry set state = 'waiting' where id = '%s'".formatted(waiting.id()));
    EntryRef noticed = cast.report(cast.member());
    cast.run(
        """
        insert into desk_rule_note (rule, entry_id, detail, mode, at)
        values ('far-outside', '%s', 'far', 'note', now())\
        """
            .formatted(noticed.id()));
    Actor asks = cast.member();
    cast.run(
        "insert into join_request (member_id, text, asked_at) values ('%s', 'Hello.', now())"
            .formatted(asks.memberId()));
    after.add(
        () ->
            cast.run("delete from join_request where member_id = '%s'".formatted(asks.memberId())));
    catalog.queueUnfiled(TermKind.MATERIAL, "Quillwood " + UUID.randomUUID(), Instant.now());
    Actor member = cast.member();
    Standing caution = care.caution(member, CAUTION);
    UUID proposal = proposals.propose(member, caution.rule(), caution.version(), "Clearer.").id();
    after.add(() -> proposals.withdraw(member, proposal));
    care.proposeRemoval(cast.moderator(), CAUTION, "It stands twice.");
    after.add(() -> care.keepStanding(cast.moderator(), CAUTION, "It does not."));
  }

  @Test
  void everyReasonOfAFlagHasItsPlaceAndTheWorstOfAnEntryDecides() {
    Actor owner = cast.person(Role.OWNER);
    for (FlagReason reason : FlagReason.values()) {
      UUID id = flagged(reason).id();
      Task task = of(all(owner, "worst"), id);
      assertEquals(reason.rank(), task.rank(), reason.code());
      assertEquals(List.of(reason), task.about().reasons());
      assertEquals("/desk/items/report/" + task.id(), task.path());
    }
    UUID twice = flagged(FlagReason.SPAM, FlagReason.UNSAFE_ADVICE).id();
    Task both = of(all(owner, "worst"), twice);
    assertEquals(FlagReason.UNSAFE_ADVICE.rank(), both.rank());
    assertEquals(
        Set.of(FlagReason.SPAM, FlagReason.UNSAFE_ADVICE), Set.copyOf(both.about().reasons()));
    assertEquals(2, both.count());
  }

  @Test
  void amongReasonsThoseThatHarmStandFirst() {
    Set<FlagReason> worst =
        EnumSet.of(FlagReason.UNSAFE_ADVICE, FlagReason.PERSONAL_DATA, FlagReason.RIGHTS);
    for (FlagReason reason : FlagReason.values()) {
      assertEquals(worst.contains(reason) ? 0 : 1, reason.rank(), reason.code());
      assertTrue(reason.rank() < TaskKind.ENTRY.rank(), "before all that is no flag");
    }
  }
}
