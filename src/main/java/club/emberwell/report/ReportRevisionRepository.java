package club.emberwell.report;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** Rows of report revisions, only ever added. */
@ApplicationScoped
class ReportRevisionRepository
    implements PanacheRepositoryBase<ReportRevisionEntity, ReportRevisionEntity.Key> {
  /** Newest first. */
  List<Revision> of(UUID report) {
    return getEntityManager()
        .createQuery(
            "select v, m.handle from ReportRevisionEntity v left join Member m on m.id = v.editorId"
                + " where v.reportId = :report order by v.version desc",
            Object[].class)
        .setParameter("report", report)
        .getResultStream()
        .map(row -> ((ReportRevisionEntity) row[0]).toRevision((String) row[1]))
        .toList();
  }
}
