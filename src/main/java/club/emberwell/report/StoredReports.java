package club.emberwell.report;

import club.emberwell.report.SnapshotRepository.Named;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.ShownPhotos;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Snapshots from the database: one statement for the reports, one for their trials, one for the
 * photos of those that have some.
 */
@ApplicationScoped
class StoredReports implements ReportSource {
  private final SnapshotRepository reports;
  private final TrialRepository trials;
  private final ShownPhotos photos;
  private final KeptSnapshots kept = new KeptSnapshots();

  StoredReports(SnapshotRepository reports, TrialRepository trials, ShownPhotos photos) {
    this.reports = reports;
    this.trials = trials;
    this.photos = photos;
  }

  @Override
  @Transactional
  public List<ReportSnapshot> byIds(Collection<UUID> ids) {
    return ids.isEmpty() ? List.of() : whole(reports.named(ids));
  }

  @Override
  @Transactional
  public List<ReportSnapshot> shown(Collection<UUID> ids) {
    if (ids.isEmpty()) {
      return List.of();
    }
    // read before the rows themselves: what changes in between is read again next time
    Map<UUID, String> stamps = reports.stamps(ids);
    List<ReportSnapshot> all = new ArrayList<>();
    List<UUID> changed = new ArrayList<>();
    stamps.forEach(
        (id, stamp) -> kept.get(id, stamp).ifPresentOrElse(all::add, () -> changed.add(id)));
    for (ReportSnapshot read : byIds(changed)) {
      kept.put(stamps.get(read.id()), read);
      all.add(read);
    }
    return all;
  }

  @Override
  @Transactional
  public List<ReportSnapshot> liveAfter(long after, int most) {
    return whole(reports.namedLiveAfter(after, most));
  }

  private List<ReportSnapshot> whole(List<Named> found) {
    if (found.isEmpty()) {
      return List.of();
    }
    Map<UUID, List<TrialEntity>> byReport =
        trials.of(found.stream().map(named -> named.report().id()).toList());
    Map<UUID, Photo> first =
        photos.firstOf(
            found.stream()
                .filter(named -> named.names().photos() > 0)
                .map(named -> named.report().id())
                .toList());
    return found.stream()
        .map(
            named ->
                named
                    .report()
                    .toSnapshot(
                        named.names(),
                        byReport.getOrDefault(named.report().id(), List.of()),
                        first.get(named.report().id())))
        .toList();
  }
}
