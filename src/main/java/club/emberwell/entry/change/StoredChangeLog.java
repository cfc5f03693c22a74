package club.emberwell.entry.change;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * The change rows in the database. A reader stays below the oldest running transaction: rows become
 * visible in the order of commits, not of their numbers, so whoever polled by number alone would
 * step over a row whose transaction was still open.
 */
@ApplicationScoped
public class StoredChangeLog implements ChangeLog {
  /** Rows older than this are dropped; a node away for longer rebuilds its index. */
  static final Duration KEPT = Duration.ofDays(7);

  private final ChangeRowRepository rows;
  private final ReportChangeRepository reports;

  StoredChangeLog(ChangeRowRepository rows, ReportChangeRepository reports) {
    this.rows = rows;
    this.reports = reports;
  }

  @Override
  @Transactional
  public UUID epoch() {
    return rows.epoch();
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
  public Position head() {
    return new Position(rows.oldestRunning() - 1, Long.MAX_VALUE);
  }

  @Override
  @Transactional
  public Position trimmedTo() {
    return rows.trimmedTo();
  }

  @Scheduled(every = "1h", delayed = "10m")
  @Transactional
  void trimOld() {
    trim(Instant.now().minus(KEPT));
  }

  /** Drops rows up to the newest one written before then, and remembers how far. */
  @Transactional
  public void trim(Instant before) {
    rows.newestBefore(before).ifPresent(rows::deleteTo);
    reports.deleteOvertaken();
  }

  /**
   * After a restore: the rows' transaction numbers are those of another server, so they go, and the
   * new epoch makes every node rebuild.
   */
  @Transactional
  public UUID startNewEpoch() {
    UUID epoch = UUID.randomUUID();
    rows.deleteAll(epoch);
    reports.renew();
    return epoch;
  }
}
