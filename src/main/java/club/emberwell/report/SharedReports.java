package club.emberwell.report;

import club.emberwell.report.ReportSnapshot.Author;
import club.emberwell.report.ReportSnapshot.Burner;
import club.emberwell.report.SnapshotRepository.Named;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * Live reports as they may leave the club, some at a time and each time in the caller's
 * transaction: an author who is not to be named has a number and nothing else.
 */
@ApplicationScoped
public class SharedReports {
  private final SnapshotRepository reports;
  private final TrialRepository trials;

  SharedReports(SnapshotRepository reports, TrialRepository trials) {
    this.reports = reports;
    this.trials = trials;
  }

  /** The next ones by number behind {@code after}. */
  public List<StoredReport> liveAfter(long after, int most) {
    reports.onlyRead();
    return shared(reports.namedLiveAfter(after, most));
  }

  /** Those of these that are live, by number. */
  public List<StoredReport> live(Collection<Long> numbers) {
    reports.onlyRead();
    return numbers.isEmpty() ? List.of() : shared(reports.namedLive(numbers));
  }

  private List<StoredReport> shared(List<Named> found) {
    if (found.isEmpty()) {
      return List.of();
    }
    List<UUID> ids = found.stream().map(named -> named.report().id()).toList();
    Map<UUID, List<TrialEntity>> byReport = trials.of(ids);
    Set<UUID> unnamed = reports.unnamed(ids);
    return found.stream()
        .map(
            named -> {
              ReportEntity report = named.report();
              ReportSnapshot whole =
                  report.toSnapshot(
                      named.names(), byReport.getOrDefault(report.id(), List.of()), null);
              return new StoredReport(
                  unnamed.contains(report.id()) ? withoutName(whole) : whole,
                  report.written(),
                  report.numberStyle(),
                  report.entry().origin(),
                  List.of(),
                  List.of(),
                  false);
            })
        .toList();
  }

  /** The name of a machine tells whose it is as well as a handle does. */
  private static ReportSnapshot withoutName(ReportSnapshot r) {
    Burner used = r.machine();
    return new ReportSnapshot(
        r.standing(),
        new Author(null, r.author().number(), null),
        new Burner(null, used.number(), null, used.model(), used.laser()),
        r.work(),
        r.trials(),
        r.repeatOf(),
        r.beside());
  }
}
