package club.emberwell.desk.undo;

import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.undo.UndoRepository.Due;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.member.Actor;
import club.emberwell.member.Members;
import club.emberwell.member.account.Accounts;
import club.emberwell.remark.EntryForbidden;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.EntryUnknown;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;

/**
 * Takes the steps of undos, each in its own transaction, so that one that cannot be taken does not
 * hold up the others and a server that stops goes on where it was.
 */
@ApplicationScoped
class UndoWork {
  private final UndoRepository undos;
  private final EntryLife life;
  private final Members members;
  private final Accounts accounts;

  UndoWork(UndoRepository undos, EntryLife life, Members members, Accounts accounts) {
    this.undos = undos;
    this.life = life;
    this.members = members;
    this.accounts = accounts;
  }

  @Scheduled(every = "2s", delayed = "10s", concurrentExecution = ConcurrentExecution.SKIP)
  void goOn() {
    QuarkusTransaction.requiringNew()
        .call(undos::open)
        .forEach(run -> some(run, DeskLimits.UNDO_BATCH));
  }

  /** Takes at most so many steps of a run. */
  void some(UUID id, int most) {
    UndoRun run = QuarkusTransaction.requiringNew().call(() -> undos.run(id)).orElseThrow();
    if (run.over()) {
      return;
    }
    boolean restoring = run.state().equals("restoring");
    UUID by = restoring ? run.restoredBy() : run.startedBy();
    Actor actor =
        QuarkusTransaction.requiringNew().call(() -> members.byId(by)).orElseThrow().actor();
    for (int i = 0; i < most; i++) {
      if (!step(run, actor, restoring)) {
        finish(run, restoring);
        return;
      }
    }
  }

  /** False where nothing is left to do. */
  private boolean step(UndoRun run, Actor actor, boolean restoring) {
    Due[] at = new Due[1];
    try {
      return QuarkusTransaction.requiringNew()
          .call(
              () -> {
                Optional<Due> due = undos.due(run.id(), restoring);
                due.ifPresent(
                    d -> {
                      at[0] = d;
                      take(run, d, actor, restoring);
                    });
                return due.isPresent();
              });
    } catch (EntryForbidden | EntryUnknown | EntryRefused | IllegalStateException e) {
      skip(run, at[0], e.getMessage());
      return true;
    }
  }

  private void skip(UndoRun run, Due due, String why) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              undos.done(run.id(), due, null, why == null ? "cannot be done" : why, Instant.now());
            });
  }

  private void take(UndoRun run, Due due, Actor actor, boolean restoring) {
    String why = restoring ? "Reversed: " + run.reason() : run.reason();
    if (restoring) {
      back(run, due, actor, why);
      undos.restored(run.id(), due, Instant.now());
    } else {
      Integer version = forth(run, due, actor, why);
      undos.done(run.id(), due, version, null, Instant.now());
    }
  }

  /** Undoes one thing; the version a text had before, for taking it back. */
  private Integer forth(UndoRun run, Due due, Actor actor, String why) {
    return switch (due.step()) {
      case REMOVE -> decide(actor, due, Decision.REMOVE, why);
      case RELEASE -> decide(actor, due, Decision.RESTORE, why);
      case HOLD -> decide(actor, due, Decision.HOLD, why);
      case REVERT -> life.bringBack(actor, ref(due), due.backTo(), why);
      case FLAG -> done(() -> undos.setFlag(due.id(), "open", "withdrawn"));
      case PROPOSAL -> done(() -> undos.setProposal(due.id(), "waiting", "withdrawn"));
      case UNBAN -> done(() -> accounts.unban(actor, due.id(), why));
      case NOTE -> done(() -> undos.setNote(run.rule(), ref(due), "open", "undone"));
      case SEEN -> done(() -> undos.setSeen(run.rule(), ref(due), run.startedBy()));
    };
  }

  private Integer back(UndoRun run, Due due, Actor actor, String why) {
    return switch (due.step()) {
      case REMOVE, RELEASE, HOLD -> decide(actor, due, wayBack(due), why);
      case REVERT -> life.bringBack(actor, ref(due), due.wasVersion(), why);
      case FLAG -> done(() -> undos.setFlag(due.id(), "withdrawn", "open"));
      case PROPOSAL -> done(() -> undos.setProposal(due.id(), "withdrawn", "waiting"));
      case UNBAN -> done(() -> accounts.ban(actor, due.id(), why));
      case NOTE -> done(() -> undos.setNote(run.rule(), ref(due), "undone", "open"));
      case SEEN -> done(() -> undos.setSeen(run.rule(), ref(due), null));
    };
  }

  private Integer decide(Actor actor, Due due, Decision action, String why) {
    return done(() -> life.decide(actor, ref(due), action, why));
  }

  /** Runs what leaves no version to go back to. */
  private static Integer done(Runnable step) {
    step.run();
    return null;
  }

  /** Whatever waited for a look before is held now: somebody still has to look. */
  private static Decision wayBack(Due due) {
    return switch (due.was()) {
      case "live" -> Decision.RESTORE;
      case "removed" -> Decision.REMOVE;
      default -> Decision.HOLD;
    };
  }

  private static EntryRef ref(Due due) {
    return EntryRef.of(due.kind(), due.id());
  }

  private void finish(UndoRun run, boolean restoring) {
    QuarkusTransaction.requiringNew()
        .run(
            () -> {
              if (!undos.left(run.id(), restoring)) {
                undos.enter(
                    run.id(),
                    restoring ? "restoring" : "running",
                    restoring ? "restored" : "done",
                    null);
              }
            });
  }
}
