package club.emberwell.search;

import club.emberwell.entry.EntryState;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/** A database of reports with its change rows, in memory. */
final class FakeClub implements ChangeLog, ReportSource {
  private final Map<UUID, ReportSnapshot> reports = new HashMap<>();
  private final List<Change> changes = new ArrayList<>();
  private long transactions;
  private UUID epoch = UUID.randomUUID();
  private Position trimmed = Position.START;
  private RuntimeException away;

  synchronized void save(Collection<ReportSnapshot> all) {
    all.forEach(this::save);
  }

  synchronized void save(ReportSnapshot report) {
    reports.put(report.id(), report);
    note(report.id());
  }

  /** Stored, but its change row is never seen: what a lost row would look like. */
  synchronized void saveUnseen(ReportSnapshot report) {
    reports.put(report.id(), report);
  }

  synchronized void remove(UUID id) {
    reports.remove(id);
    note(id);
  }

  private void note(UUID id) {
    changes.add(new Change(new Position(++transactions, 1), "report", id));
  }

  synchronized void startNewEpoch() {
    epoch = UUID.randomUUID();
    changes.clear();
  }

  synchronized void trimAll() {
    trimmed = head();
    changes.clear();
  }

  synchronized void goAway(RuntimeException reason) {
    away = reason;
  }

  synchronized List<ReportSnapshot> all() {
    return List.copyOf(reports.values());
  }

  @Override
  public synchronized UUID epoch() {
    if (away != null) {
      throw away;
    }
    return epoch;
  }

  @Override
  public synchronized List<Change> since(Position position, int most) {
    return changes.stream()
        .filter(change -> change.position().xid() > position.xid())
        .limit(most)
        .toList();
  }

  @Override
  public synchronized Position head() {
    return new Position(transactions, Long.MAX_VALUE);
  }

  @Override
  public synchronized Position trimmedTo() {
    return trimmed;
  }

  @Override
  public synchronized List<ReportSnapshot> byIds(Collection<UUID> ids) {
    return ids.stream().map(reports::get).filter(Objects::nonNull).toList();
  }

  @Override
  public synchronized List<ReportSnapshot> liveAfter(long after, int most) {
    return reports.values().stream()
        .filter(report -> report.state() == EntryState.LIVE && report.number() > after)
        .sorted(Comparator.comparingLong(ReportSnapshot::number))
        .limit(most)
        .toList();
  }
}
