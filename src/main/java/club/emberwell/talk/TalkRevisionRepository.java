package club.emberwell.talk;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.UUID;

/** Rows of revisions, only ever added. */
@ApplicationScoped
class TalkRevisionRepository
    implements PanacheRepositoryBase<TalkRevisionEntity, TalkRevisionEntity.Key> {
  /** Newest first, at most {@link TalkLimits#REVISIONS}. */
  List<TalkRevision> of(UUID entry) {
    return getEntityManager()
        .createQuery(
            "select v, m.handle from TalkRevisionEntity v left join Member m on m.id = v.editorId"
                + " where v.entryId = :entry order by v.version desc",
            Object[].class)
        .setParameter("entry", entry)
        .setMaxResults(TalkLimits.REVISIONS)
        .getResultStream()
        .map(row -> ((TalkRevisionEntity) row[0]).toRevision((String) row[1]))
        .toList();
  }
}
