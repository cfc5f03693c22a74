package club.emberwell.catalog.store;

import club.emberwell.catalog.TermKind;
import club.emberwell.listing.Place;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

@ApplicationScoped
class UnfiledRepository implements PanacheRepositoryBase<UnfiledEntity, UUID> {
  // One statement, so that two nodes never make two rows of one text. What was filed and comes
  // again waits again: its spelling must have been taken back.
  private static final String COUNT_ONE =
      """
      insert into unfiled (id, kind, written, folded, first_seen, last_seen)
      values (:id, :kind, :written, :folded, :at, :at)
      on conflict (kind, folded) do update set
        count = unfiled.count + 1,
        first_seen = least(unfiled.first_seen, excluded.first_seen),
        last_seen = greatest(unfiled.last_seen, excluded.last_seen),
        state = case unfiled.state when 'filed' then 'waiting' else unfiled.state end,
        filed_to = null
      """;

  void countOne(TermKind kind, String written, String folded, Instant at) {
    getEntityManager()
        .createNativeQuery(COUNT_ONE)
        .setParameter("id", UUID.randomUUID())
        .setParameter("kind", kind.code())
        .setParameter("written", written)
        .setParameter("folded", folded)
        .setParameter("at", at)
        .executeUpdate();
  }

  /** The most written first. */
  List<UnfiledEntity> mostWritten(Place place) {
    return find("state = ?1 order by count desc, firstSeen, id", Unfiled.WAITING)
        .range(place.from(), place.to())
        .list();
  }

  /** Those seen first, first: how often a text is written changes while a program reads. */
  List<UnfiledEntity> oldest(Place place) {
    return find(
            "state = ?1 and (firstSeen, id) > (?2, ?3) order by firstSeen, id",
            Unfiled.WAITING,
            place.time(0),
            place.id(1))
        .range(place.from(), place.to())
        .list();
  }
}
