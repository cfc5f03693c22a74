package club.emberwell.grid;

import club.emberwell.listing.Place;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Rows of test grids. */
@ApplicationScoped
class GridRepository implements PanacheRepositoryBase<GridEntity, UUID> {
  /** With its entry. */
  Optional<GridEntity> whole(UUID id) {
    return find("from GridEntity g join fetch g.entry where g.id = ?1", id).firstResultOptional();
  }

  /** The grid whose results stand in a report. */
  Optional<GridEntity> ofReport(UUID report) {
    return find("from GridEntity g join fetch g.entry where g.reportId = ?1", report)
        .firstResultOptional();
  }

  long countOf(UUID member) {
    return count("entry.memberId = ?1", member);
  }

  /** A member's grids that still stand, newest first. */
  List<GridEntity> standing(UUID member, Place place) {
    return find(
            """
            from GridEntity g join fetch g.entry e
            where e.memberId = ?1 and e.state = EntryState.LIVE
              and (e.createdAt, e.number) < (?2, ?3)
            order by e.createdAt desc, e.number desc""",
            member,
            place.time(0),
            place.number(1))
        .range(place.from(), place.to())
        .list();
  }

  /** The report in sight that holds a grid's results. */
  Optional<UUID> publicReport(UUID id) {
    return getEntityManager()
        .createQuery(
            """
            select r.id from GridEntity g join EntryEntity r on r.id = g.reportId
            where g.id = :id and r.state = EntryState.LIVE""",
            UUID.class)
        .setParameter("id", id)
        .getResultStream()
        .findFirst();
  }
}
