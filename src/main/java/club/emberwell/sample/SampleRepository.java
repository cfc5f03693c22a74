package club.emberwell.sample;

import club.emberwell.listing.Place;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of samples, with their tags. */
@ApplicationScoped
class SampleRepository implements PanacheRepositoryBase<SampleEntity, UUID> {
  private final Session db;

  SampleRepository(Session db) {
    this.db = db;
  }

  /** A sample beside its tag. */
  record Tagged(SampleEntity sample, String code) {}

  /** A sample that still stands, and where in the order of posting. */
  record Standing(UUID id, Instant at, long number) {
    List<?> place() {
      return List.of(at, number);
    }
  }

  Optional<SampleEntity> whole(UUID id) {
    return find("from SampleEntity s join fetch s.entry where s.id = ?1", id).firstResultOptional();
  }

  Optional<Tagged> tagged(UUID id) {
    return db.createQuery(
            """
            select new club.emberwell.sample.SampleRepository$Tagged(s, t.code)
            from SampleEntity s join s.entry join TagEntity t on t.entryId = s.id
            where s.id = :id""",
            Tagged.class)
        .setParameter("id", id)
        .getResultStream()
        .findFirst();
  }

  long countOf(UUID member) {
    return count("entry.memberId = ?1", member);
  }

  /**
   * A member's samples that still stand, newest first.
   *
   * @param patterns that what is known of a sample must be like, each of them
   */
  List<Standing> standing(UUID member, List<String> patterns, Place place) {
    return db.createNativeQuery(
            """
            select s.id, e.created_at, e.number
            from sample s join entry e on e.id = s.id join tag t on t.entry_id = s.id
              left join entry o on o.id = coalesce(s.report_id, s.grid_id)
            where e.member_id = :member and e.kind = 'sample' and e.state = 'live'
              and lower(concat_ws(' ', t.code, replace(t.code, '-', ''), e.title, o.title, s.box,
                s.place, s.notes)) like all (:patterns)
              and (e.created_at, e.number) < (:at, :number)
            order by e.created_at desc, e.number desc""",
            Standing.class)
        .setParameter("member", member)
        .setParameter("patterns", patterns.toArray(String[]::new))
        .setParameter("at", place.time(0))
        .setParameter("number", place.number(1))
        .setFirstResult(place.from())
        .setMaxResults(place.most())
        .getResultList();
  }

  /** Those of a member's samples that still stand, newest first. */
  List<Tagged> standing(UUID member, Collection<UUID> ids) {
    return db.createQuery(
            """
            select new club.emberwell.sample.SampleRepository$Tagged(s, t.code)
            from SampleEntity s join s.entry e join TagEntity t on t.entryId = s.id
            where e.memberId = :member and e.state = EntryState.LIVE and s.id in :ids
            order by e.createdAt desc, e.number desc""",
            Tagged.class)
        .setParameter("member", member)
        .setParameter("ids", ids)
        .getResultList();
  }

  /** The report in sight that a sample shows by itself or through its grid. */
  Optional<UUID> report(UUID sample) {
    return db.createQuery(
            """
            select r.id from SampleEntity s left join GridEntity g on g.id = s.gridId
              join EntryEntity r on r.id = coalesce(s.reportId, g.reportId)
            where s.id = :id and r.state = EntryState.LIVE""",
            UUID.class)
        .setParameter("id", sample)
        .getResultStream()
        .findFirst();
  }
}
