package club.emberwell.entry;

import club.emberwell.listing.Place;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;
import org.hibernate.query.SelectionQuery;

/** Rows of entries of every kind. */
@ApplicationScoped
class EntryRepository implements PanacheRepositoryBase<EntryEntity, UUID> {
  /** An entry e that others may see, beside the name m of its author. */
  private static final String NAMED =
      """
      select e, m.handle
      from EntryEntity e join Member m on m.id = e.memberId
      where e.kind in :shared
      """;

  private final Session db;

  EntryRepository(Session db) {
    this.db = db;
  }

  /** Held until the transaction ends, so that versions are counted one by one. */
  Optional<EntryEntity> locked(UUID id) {
    return findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE);
  }

  /** Waits until nobody else is posting under this id. */
  void awaitTurn(UUID id) {
    db.createNativeQuery(
            "select cast(pg_advisory_xact_lock(hashtextextended(:id, 0)) as text)", String.class)
        .setParameter("id", "entry ".concat(id.toString()))
        .getSingleResult();
  }

  Optional<Entry> find(EntryRef ref) {
    return entries(
            query(NAMED.concat("and e.id = :id and e.kind = :kind"))
                .setParameter("id", ref.id())
                .setParameter("kind", ref.kind()))
        .stream()
        .findFirst();
  }

  List<Entry> all(Collection<UUID> ids) {
    return ids.isEmpty()
        ? List.of()
        : entries(query(NAMED.concat("and e.id in :ids")).setParameter("ids", ids));
  }

  /** What waits for a look, oldest first. */
  List<Entry> waiting(Place place) {
    return entries(
        query(
                NAMED.concat(
                    """
                    and e.state = :waiting and (e.createdAt, e.id) > (:at, :after)
                    order by e.createdAt, e.id"""))
            .setParameter("waiting", EntryState.WAITING)
            .setParameter("at", place.time(0))
            .setParameter("after", place.id(1))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  /** A member's newest entries, in whatever state. */
  List<Entry> of(UUID member, Place place) {
    return entries(
        query(
                NAMED.concat(
                    """
                    and e.memberId = :member and (e.createdAt, e.id) < (:at, :after)
                    order by e.createdAt desc, e.id desc"""))
            .setParameter("member", member)
            .setParameter("at", place.time(0))
            .setParameter("after", place.id(1))
            .setFirstResult(place.from())
            .setMaxResults(place.most()));
  }

  private SelectionQuery<Object[]> query(String hql) {
    return db.createSelectionQuery(hql, Object[].class).setParameter("shared", EntryKind.SHARED);
  }

  private static List<Entry> entries(SelectionQuery<Object[]> query) {
    return query
        .getResultStream()
        .map(row -> ((EntryEntity) row[0]).toEntry((String) row[1]))
        .toList();
  }
}
