package club.emberwell.search;

import club.emberwell.entry.EntryState;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
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
  private long number = 1;
  private int branch;
  private Position trimmed = Position.START;
  private RuntimeException away;
  private boolean restless;

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
    Instant at = Instant.EPOCH.plus(++transactions * 1000 + branch, ChronoUnit.MICROS);
    changes.add(new Change(new Position(transactions, transactions), "report", id, at));
  }

  synchronized void startNewEpoch() {
    epoch = UUID.randomUUID();
    number++;
    changes.clear();
    trimmed = Position.START;
  }

  /** As it was so many transactions ago, and from there another way. */
  synchronized void putBack(long few) {
    branch++;
    for (; few > 0; few--) {
      Change last = changes.remove(changes.size() - 1);
      reports.remove(last.id());
      transactions--;
    }
  }

  /** Whatever is made of it is out of date at once. */
  synchronized void restless() {
    restless = true;
  }

  synchronized void calm() {
    restless = false;
  }

  synchronized void trimAll() {
    trimmed = changes.get(changes.size() - 1).position();
    changes.subList(0, changes.size() - 1).clear();
  }

  synchronized void goAway(RuntimeException reason) {
    away = reason;
  }

  synchronized List<ReportSnapshot> all() {
    return List.copyOf(reports.values());
  }

  private void answer() {
    if (away != null) {
      throw away;
    }
  }

  @Override
  public synchronized UUID epoch() {
    answer();
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
  public synchronized Known head() {
    Mark none = new Mark(trimmed, null, null);
    return new Known(
        epoch, number, changes.isEmpty() ? none : changes.get(changes.size() - 1).mark());
  }

  @Override
  public synchronized Footing footing(Known known) {
    answer();
    Mark last = known.last();
    boolean there = changes.stream().anyMatch(change -> change.mark().equals(last));
    if (restless || !known.history().equals(epoch)) {
      return Footing.lost(there, "another history");
    }
    if (last.position().isBefore(trimmed)) {
      return Footing.lost(false, "too old");
    }
    if (there || last.id() == null) {
      return Footing.FIRM;
    }
    epoch = UUID.randomUUID();
    number++;
    return Footing.lost(false, "put back");
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
