package club.emberwell.report.copy;

import club.emberwell.entry.EntryState;
import club.emberwell.entry.change.ChangeLog.Position;
import club.emberwell.entry.change.StoredChangeLog;
import club.emberwell.entry.change.StoredChangeLog.ReportChanged;
import club.emberwell.listing.Cursor;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Place;
import club.emberwell.listing.Slice;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What changed among the public reports, in the order in which it became so. Of each report its
 * newest change is told, and the report as it is now, so that whoever takes all of it in order has
 * what the club has.
 */
@ApplicationScoped
public class ReportChanges {
  private static final ListOrder ORDER = ListOrder.oldestFirst("changes", Part.SIZE_MAX);

  /** A change is dated by the beginning of its transaction, and becomes visible at its end. */
  private static final Duration LONGEST_TRANSACTION = Duration.ofMinutes(10);

  private final StoredChangeLog log;
  private final ReportSource reports;

  ReportChanges(StoredChangeLog log, ReportSource reports) {
    this.log = log;
    this.reports = reports;
  }

  /**
   * Changes behind a cursor, oldest first: three statements, and one more where there are none.
   * There always is a next cursor, to come back with; where there are no rows, nothing has changed
   * since.
   *
   * @param updatedAfter none made long before then, or null; those of ten minutes before come too
   * @throws CopyOutdated for a cursor of before a restore
   */
  @Transactional
  public Slice<ReportChange> since(Part part, Instant updatedAfter) {
    UUID history = log.epoch();
    Place place = Place.of(part, ORDER);
    if (!place.atBeginning() && !place.id(0).equals(history)) {
      throw new CopyOutdated();
    }
    Position from =
        place.atBeginning() ? Position.START : new Position(place.number(1), place.number(2));
    Instant since = updatedAfter == null ? Instant.EPOCH : updatedAfter.minus(LONGEST_TRANSACTION);
    List<ReportChanged> found = log.reports(from, since, part.rows(ORDER));
    if (found.isEmpty() && !from.equals(Position.START) && log.isAhead(from)) {
      throw new CopyOutdated();
    }
    Position to = found.isEmpty() ? from : found.get(found.size() - 1).position();
    String next = Cursor.of(ORDER.name(), List.of(history, to.xid(), to.seq())).text();
    return new Slice<>(found, 0, next).all(this::load);
  }

  private List<ReportChange> load(List<ReportChanged> found) {
    Map<UUID, ReportSnapshot> live =
        reports.byIds(found.stream().map(ReportChanged::report).toList()).stream()
            .filter(report -> report.state() == EntryState.LIVE)
            .collect(Collectors.toMap(ReportSnapshot::id, Function.identity()));
    return found.stream()
        .map(
            change ->
                new ReportChange(
                    change.report(), change.at(), Optional.ofNullable(live.get(change.report()))))
        .toList();
  }
}
