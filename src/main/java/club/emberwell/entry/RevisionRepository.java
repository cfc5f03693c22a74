package club.emberwell.entry;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of revisions, only ever added. */
@ApplicationScoped
class RevisionRepository implements PanacheRepositoryBase<RevisionEntity, RevisionEntity.Key> {
  private final Session db;

  RevisionRepository(Session db) {
    this.db = db;
  }

  /** Newest first; one that changed no words holds those of the version before. */
  @SuppressWarnings("unchecked")
  List<Revision<String>> of(UUID entry, int most) {
    return db.createQuery(
            """
            select new club.emberwell.entry.Revision(
              v.version, v.action, v.memberId, m.handle, v.at, v.reason, v.state,
              (select w.written from RevisionEntity w where w.entryId = v.entryId
                and w.version = (select max(x.version) from RevisionEntity x
                  where x.entryId = v.entryId and x.version <= v.version
                    and x.written is not null)))
            from RevisionEntity v left join Member m on m.id = v.memberId
            where v.entryId = :entry
            order by v.version desc""",
            Revision.class)
        .setParameter("entry", entry)
        .setMaxResults(most)
        .getResultStream()
        .map(revision -> (Revision<String>) revision)
        .toList();
  }

  /** A revision beside the entry it is of. */
  record Of(UUID entry, Revision<String> revision) {}

  /** The same of many entries, of each newest first. */
  List<Of> of(Collection<UUID> entries) {
    return entries.isEmpty()
        ? List.of()
        : db.createQuery(
                """
                select v.entryId, new club.emberwell.entry.Revision(
                  v.version, v.action, v.memberId, m.handle, v.at, v.reason, v.state,
                  (select w.written from RevisionEntity w where w.entryId = v.entryId
                    and w.version = (select max(x.version) from RevisionEntity x
                      where x.entryId = v.entryId and x.version <= v.version
                        and x.written is not null)))
                from RevisionEntity v left join Member m on m.id = v.memberId
                where v.entryId in :entries
                order by v.entryId, v.version desc""",
                Of.class)
            .setParameter("entries", entries)
            .getResultList();
  }

  /** The words of a version as stored JSON. */
  Optional<String> words(UUID entry, int version) {
    return db.createQuery(
            """
            select v.written from RevisionEntity v
            where v.entryId = :entry and v.version <= :version and v.written is not null
            order by v.version desc
            limit 1""",
            String.class)
        .setParameter("entry", entry)
        .setParameter("version", version)
        .uniqueResultOptional();
  }
}
