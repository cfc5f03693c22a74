package club.emberwell.entry.change;

import club.emberwell.entry.change.ChangeLog.Position;
import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.transaction.Transactional;
import java.sql.SQLException;
import java.util.Set;
import java.util.UUID;
import org.jboss.logging.Logger;

/**
 * Knows whether the database still lies where its numbers of transactions were given, and begins a
 * new history where it does not: after a dump was restored, a copy put in its place, or a standby
 * promoted, which may lack what the last server had confirmed.
 */
@ApplicationScoped
class Histories {
  private static final Logger LOG = Logger.getLogger(Histories.class);

  /** insufficient_privilege, feature_not_supported. */
  private static final Set<String> NOT_TOLD = Set.of("42501", "0A000");

  private final GrowingPause pause;
  private final HistoryRepository rows;
  private final ReportChangeRepository reports;
  private final Event<HistoryBegins> begins;
  private volatile Boolean serverTells;

  Histories(
      RenewalLimits limits,
      HistoryRepository rows,
      ReportChangeRepository reports,
      Event<HistoryBegins> begins) {
    this.pause =
        new GrowingPause(limits.historiesAtOnce(), limits.historyPause(), limits.longestPause());
    this.rows = rows;
    this.reports = reports;
    this.begins = begins;
  }

  /**
   * The history of the database.
   *
   * @param here where it lies, as {@code server/timeline/database/table}
   * @param liesAt where it lay when the history began
   */
  record History(UUID epoch, long number, Position trimmedTo, String here, String liesAt) {

    /** A part that either time could not be asked for is left out. */
    boolean isAtHome() {
      String[] now = here.split("/");
      String[] then = liesAt.split("/");
      boolean same = now.length == then.length;
      for (int i = 0; same && i < now.length; i++) {
        same = now[i].equals(then[i]) || now[i].equals("-") || then[i].equals("-");
      }
      return same;
    }
  }

  /** As it stands, begun anew first where that is due. */
  @Transactional
  History current() {
    History found = read();
    if (found.isAtHome()) {
      return found;
    }
    if (!pause.isOver()) {
      throw new IllegalStateException(
          "the database lies somewhere else again and again (now " + found.here() + "); waiting");
    }
    return begin(found.epoch(), 0, found.liesAt().isEmpty() ? "" : "it lay elsewhere before");
  }

  private History read() {
    return serverTells() ? rows.history() : rows.historyWithoutServer();
  }

  private boolean serverTells() {
    Boolean known = serverTells;
    if (known == null) {
      known = asked();
      serverTells = known;
    }
    return known;
  }

  /** In a transaction of its own, which a refusal ends. */
  private boolean asked() {
    try {
      QuarkusTransaction.requiringNew().call(rows::history);
      return true;
    } catch (RuntimeException e) {
      for (Throwable cause = e; cause != null; cause = cause.getCause()) {
        // one that never reached the database has no state
        if (cause instanceof SQLException refused
            && refused.getSQLState() != null
            && NOT_TOLD.contains(refused.getSQLState())) {
          LOG.infof("PostgreSQL does not say which server it is (%s)", refused.getMessage());
          return false;
        }
      }
      throw e;
    }
  }

  /**
   * Begins a new history unless another node has done so.
   *
   * @param over the one that is over
   * @param above the new one has a higher number than this
   * @param why in words; nothing where there is nothing to say
   */
  History begin(UUID over, long above, String why) {
    return QuarkusTransaction.requiringNew().call(() -> begun(over, above, why));
  }

  private History begun(UUID over, long above, String why) {
    rows.lock();
    History found = read();
    if (!found.epoch().equals(over)) {
      return found;
    }
    if (!rows.areWhole()) {
      throw new IllegalStateException("the database is being restored; waiting for its last table");
    }
    UUID epoch = UUID.randomUUID();
    long number = Math.max(found.number(), above) + 1;
    rows.renumber(over, epoch);
    reports.renew();
    rows.begin(epoch, number, found.here());
    begins.fire(new HistoryBegins());
    pause.begin();
    if (!why.isEmpty()) {
      LOG.warnf(
          "The database was restored, replaced or put back (%s; it lies at %s, before at %s):"
              + " every node makes its search index anew, and copies of the club are taken anew",
          why, found.here(), found.liesAt());
    }
    return new History(epoch, number, Position.START, found.here(), found.here());
  }
}
