package club.emberwell.exchange;

import club.emberwell.exchange.PersonalData.Choice;
import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import io.quarkus.scheduler.Scheduled.ConcurrentExecution;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jboss.logging.Logger;

/**
 * Who asked to be forgotten, and how: ids and choices, nothing else. A backup brings erased people
 * back; whoever restores one takes the entries along and replays them.
 */
@ApplicationScoped
public class ErasureLedger {
  private static final Logger LOG = Logger.getLogger(ErasureLedger.class);

  private final ErasureRepository rows;
  private final Eraser eraser;

  ErasureLedger(ErasureRepository rows, Eraser eraser) {
    this.rows = rows;
    this.eraser = eraser;
  }

  /** One erasure. */
  public record Entry(UUID member, Choice choice, Instant at) {}

  /** All entries, oldest first: what a restore must take along from the state it replaces. */
  @Transactional
  public List<Entry> entries() {
    return rows.all();
  }

  /**
   * Carries out again what is entered and not (any more) done.
   *
   * @return how many people were forgotten again
   */
  public int replay() {
    List<Entry> undone = QuarkusTransaction.requiringNew().call(rows::undone);
    return carryOut(undone);
  }

  /** The same with entries of another state of this club, e.g. from before a restore. */
  public int replay(Collection<Entry> entries) {
    return carryOut(entries) + replay();
  }

  private int carryOut(Collection<Entry> entries) {
    int done = 0;
    for (Entry entry : entries) {
      done += eraser.carryOut(entry) ? 1 : 0;
    }
    return done;
  }

  /** A restored database is put right before anybody reads it. */
  void atStart(@Observes StartupEvent started) {
    forgetAgain();
  }

  /** Also one that was restored, or whose ledger was filled up, under a running server. */
  @Scheduled(every = "1m", delayed = "1m", concurrentExecution = ConcurrentExecution.SKIP)
  void forgetAgain() {
    int again = replay();
    if (again > 0) {
      LOG.infof("forgot %d people again who had come back with a restored state", again);
    }
  }
}
