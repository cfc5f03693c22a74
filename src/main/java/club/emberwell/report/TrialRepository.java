package club.emberwell.report;

import club.emberwell.report.reading.TrialSnapshot;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;

/** Rows of trials; they live and die with their report. */
@ApplicationScoped
class TrialRepository implements PanacheRepositoryBase<TrialEntity, TrialEntity.Key> {
  /** The trials of each report in their order. */
  Map<UUID, List<TrialEntity>> of(Collection<UUID> reports) {
    return find("reportId in ?1 order by reportId, position", reports).stream()
        .collect(Collectors.groupingBy(TrialEntity::reportId));
  }

  void add(UUID report, List<TrialSnapshot> trials) {
    for (int i = 0; i < trials.size(); i++) {
      persist(new TrialEntity(report, i, trials.get(i)));
    }
  }

  /** The old ones must be gone before new ones take their places. */
  void replace(UUID report, List<TrialSnapshot> trials) {
    list("reportId", report).forEach(getEntityManager()::detach);
    delete("reportId", report);
    add(report, trials);
  }
}
