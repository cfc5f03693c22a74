package club.emberwell.entry.change;

import club.emberwell.entry.change.ChangeLog.Change;
import club.emberwell.entry.change.ChangeRowRepository.Mark;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.logging.Logger;

/**
 * Hands change rows to the readers whose position is kept in the database: one node at a time, each
 * run a bounded number of rows in one transaction with what the reader does about them.
 */
@ApplicationScoped
public class ChangeFollower {
  private static final Logger LOG = Logger.getLogger(ChangeFollower.class);
  private static final int SECONDS = 300;

  private final ChangeRowRepository rows;
  private final ChangeLog log;
  private final Set<String> troubled = ConcurrentHashMap.newKeySet();

  ChangeFollower(ChangeRowRepository rows, ChangeLog log) {
    this.rows = rows;
    this.log = log;
  }

  /** Who follows the change rows. */
  public interface Reader {
    /** Its row in {@code change_reader}. */
    String name();

    /** Rows taken in one run. */
    int most();

    /** Does what follows from changes, in the run's transaction. */
    void take(List<Change> changes);
  }

  /** Catches up; trouble is logged once and the next call begins where the last one ended. */
  public void all(Reader reader) {
    try {
      while (some(reader)) {
        LOG.debugf("more changes wait for %s", reader.name());
      }
      troubled.remove(reader.name());
    } catch (RuntimeException e) {
      if (troubled.add(reader.name())) {
        LOG.warnf("%s cannot follow what changed: %s", reader.name(), e.getMessage());
      }
    }
  }

  /**
   * Takes the next changes, in one transaction.
   *
   * @return true where there are more
   */
  public boolean some(Reader reader) {
    return QuarkusTransaction.requiringNew().timeout(SECONDS).call(() -> next(reader));
  }

  private boolean next(Reader reader) {
    Mark mark = rows.claim(reader.name()).orElse(null);
    if (mark == null) {
      return false;
    }
    UUID epoch = log.epoch();
    if (!epoch.equals(mark.epoch())) {
      // what was posted before there were readers, or before a restore, is left alone
      rows.reached(reader.name(), epoch, log.head());
      return false;
    }
    List<Change> some = log.since(mark.position(), reader.most());
    if (some.isEmpty()) {
      return false;
    }
    reader.take(some);
    rows.reached(reader.name(), epoch, some.get(some.size() - 1).position());
    return some.size() == reader.most();
  }
}
