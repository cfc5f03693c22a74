package club.emberwell.entry.change;

import club.emberwell.entry.change.Histories.History;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.interceptor.Interceptor;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jboss.logging.Logger;

/**
 * The change rows in the database. A reader stays below the oldest running transaction: rows become
 * visible in the order of commits, not of their numbers, so whoever polled by number alone would
 * step over a row whose transaction was still open.
 */
@ApplicationScoped
public class StoredChangeLog implements ChangeLog {
  /** Rows older than this are dropped; a node away for longer rebuilds its index. */
  static final Duration KEPT = Duration.ofDays(7);

  private static final Logger LOG = Logger.getLogger(StoredChangeLog.class);

  private final ChangeRowRepository rows;
  private final ReportChangeRepository reports;
  private final HistoryRepository marks;
  private final Histories histories;

  StoredChangeLog(
      ChangeRowRepository rows,
      ReportChangeRepository reports,
      HistoryRepository marks,
      Histories histories) {
    this.rows = rows;
    this.reports = reports;
    this.marks = marks;
    this.histories = histories;
  }

  /** Before anything compares numbers of transactions. */
  void atStart(@Observes @Priority(Interceptor.Priority.PLATFORM_BEFORE) StartupEvent started) {
    try {
      epoch();
    } catch (RuntimeException e) {
      LOG.warn("it is not known yet which database this is; whoever follows changes waits", e);
    }
  }

  @Override
  public UUID epoch() {
    return histories.current().epoch();
  }

  @Override
  @Transactional
  public Footing footing(Known known) {
    History now = histories.current();
    Mark last = known.last();
    boolean there = last.id() != null && marks.holds(last);
    if (known.history().equals(now.epoch())) {
      if (last.position().isBefore(now.trimmedTo())) {
        return Footing.lost(false, "it is older than the changes that are kept");
      }
      if (there || last.id() == null) {
        return Footing.FIRM;
      }
      histories.begin(now.epoch(), now.number(), "changes that were seen are gone from it");
    } else if (known.number() > now.number()) {
      histories.begin(now.epoch(), known.number(), "an older history came back");
    }
    return Footing.lost(there, "the database was restored or replaced since it was made");
  }

  @Override
  @Transactional
  public List<Change> since(Position position, int most) {
    return rows.since(position, most);
  }

  /**
   * A change of a report.
   *
   * @param at when its transaction began
   */
  public record ReportChanged(Position position, UUID report, Instant at) {}

  /**
   * Of each report, those that are gone too, the newest change behind a position, oldest first.
   * However long ago a reader was here, none is missing; a report that changes again comes again.
   *
   * @param since none of transactions that began before then
   */
  @Transactional
  public List<ReportChanged> reports(Position position, Instant since, int most) {
    return reports.since(position, since, most).stream()
        .map(row -> new ReportChanged(row.position(), row.report(), row.at()))
        .toList();
  }

  @Override
  @Transactional
  public Known head() {
    History now = histories.current();
    Mark none = new Mark(now.trimmedTo(), null, null);
    return new Known(now.epoch(), now.number(), rows.newest().map(Change::mark).orElse(none));
  }

  /** Whether no change of a report was ever written at a position or behind it. */
  @Transactional
  public boolean isAhead(Position position) {
    return !reports.reach(position);
  }

  /** The oldest position still kept; an index behind it must be rebuilt. */
  @Transactional
  public Position trimmedTo() {
    return histories.current().trimmedTo();
  }

  @Scheduled(every = "1h", delayed = "10m")
  @Transactional
  void trimOld() {
    trim(Instant.now().minus(KEPT));
  }

  /**
   * Drops rows before the newest one written before then, and remembers how far. That one stays: by
   * it an index that has read no further knows the database again.
   */
  @Transactional
  public void trim(Instant before) {
    rows.newestBefore(before).ifPresent(rows::deleteBefore);
    reports.deleteOvertaken();
  }

  /** Begins a new history though the database seems to be the one it was. */
  public UUID startNewEpoch() {
    return histories.begin(epoch(), 0, "").epoch();
  }
}
