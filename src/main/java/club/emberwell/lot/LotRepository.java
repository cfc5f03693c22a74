package club.emberwell.lot;

import club.emberwell.entry.own.OwnRows;
import club.emberwell.listing.Place;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of lots. */
@ApplicationScoped
class LotRepository implements OwnRows<LotEntity> {
  @Override
  public Optional<LotEntity> whole(UUID id) {
    return find("from LotEntity l join fetch l.entry where l.id = ?1", id).firstResultOptional();
  }

  /** A member's lots that still stand, the last received first. */
  List<LotEntity> standing(UUID member, Place place) {
    return find(
            """
            from LotEntity l join fetch l.entry e
            where e.memberId = ?1 and e.state = EntryState.LIVE
              and (coalesce(l.receivedOn, ?5), e.createdAt, e.number) < (?2, ?3, ?4)
            order by coalesce(l.receivedOn, ?5) desc, e.createdAt desc,
              e.number desc\
            """,
            member,
            place.date(0),
            place.time(1),
            place.number(2),
            LotEntity.LONG_AGO)
        .range(place.from(), place.to())
        .list();
  }

  /** Those of the supplier of one of them that still stand, the last received first. */
  List<LotEntity> ofSameSupplier(UUID member, UUID lot, int most) {
    return find(
            """
            from LotEntity l join fetch l.entry e
            where e.memberId = ?1 and e.state = EntryState.LIVE
              and l.supplierCode = (select m.supplierCode from LotEntity m where m.id = ?2)
            order by coalesce(l.receivedOn, ?3) desc, e.createdAt desc, e.number desc\
            """,
            member,
            lot,
            LotEntity.LONG_AGO)
        .range(0, most - 1)
        .list();
  }

  List<Lots.Inspected> inspected(UUID member) {
    return getEntityManager()
        .createQuery(
            """
            select new club.emberwell.lot.Lots$Inspected(
              l.supplier, l.supplierCode, l.received, l.usable)
            from LotEntity l join l.entry e
            where e.memberId = :member and e.state = EntryState.LIVE and l.usable is not null
            order by l.supplier\
            """,
            Lots.Inspected.class)
        .setParameter("member", member)
        .getResultList();
  }
}
