package club.emberwell.report;

import club.emberwell.bench.LaserColumns;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryEntity;
import club.emberwell.listing.Place;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of reports, and what of them is asked at a time. */
@ApplicationScoped
class ReportRepository implements PanacheRepositoryBase<ReportEntity, UUID> {
  /** A report with its entry. */
  Optional<ReportEntity> whole(UUID id) {
    return find("from ReportEntity r join fetch r.entry where r.id = ?1", id).firstResultOptional();
  }

  /**
   * Who posts.
   *
   * @param sameWords the newest report of theirs that says the same, or null
   */
  record Poster(Long number, UUID sameWords) {}

  /** Who posts, and whether they said the same since a time: one statement. */
  Poster poster(UUID memberId, String writtenHash, Instant since) {
    return getEntityManager()
        .createQuery(
            """
            select new club.emberwell.report.ReportRepository$Poster(m.number, (
              select r.id from ReportEntity r join r.entry e
              where r.writtenHash = :hash and e.memberId = m.id and e.createdAt >= :since
                and e.state <> EntryState.WITHDRAWN
              order by e.createdAt desc limit 1))
            from Member m where m.id = :member\
            """,
            Poster.class)
        .setParameter("member", memberId)
        .setParameter("hash", writtenHash)
        .setParameter("since", since)
        .getSingleResult();
  }

  /** Ids of a member's newest reports that were neither withdrawn nor removed. */
  List<UUID> latestOf(UUID memberId, int most) {
    return getEntityManager()
        .createQuery(
            """
            select e.id from EntryEntity e
            where e.memberId = :member and e.kind = EntryKind.REPORT
              and e.state in (EntryState.LIVE, EntryState.WAITING)
              and (select count(*) from TrialEntity t where t.reportId = e.id) = 1
            order by e.createdAt desc, e.number desc\
            """,
            UUID.class)
        .setParameter("member", memberId)
        .setMaxResults(most)
        .getResultList();
  }

  /**
   * Models of machines whose reports everybody sees, and of a member's own; the usual ones first.
   */
  List<String> models(UUID memberId, int most) {
    return getEntityManager()
        .createQuery(
            """
            select m.model from MachineEntity m
            where m.model is not null and (m.memberId = :member or exists (
              select 1 from ReportEntity r join r.entry e
              where r.machineId = m.id and e.state = EntryState.LIVE))
            group by m.model
            order by count(*) desc, m.model\
            """,
            String.class)
        .setParameter("member", memberId)
        .setMaxResults(most)
        .getResultList();
  }

  /** Whether the author of a report had one about the same material before it that still stands. */
  boolean isKnownMaterial(UUID id) {
    return getEntityManager()
        .createQuery(
            """
            select count(b) > 0 from ReportEntity r join r.entry e, ReportEntity b join b.entry f
            where r.id = :id and f.memberId = e.memberId and f.createdAt < e.createdAt
              and f.state in (EntryState.LIVE, EntryState.WAITING)
              and b.work.material = r.work.material\
            """,
            Boolean.class)
        .setParameter("id", id)
        .getSingleResult();
  }

  /** One report of a member's on one of their machines, or none with a null machine. */
  record Use(Long member, UUID machine) {}

  /** The machines of a member's newest reports, newest first; one row at least. */
  List<Use> uses(UUID memberId, int most) {
    return session()
        .createNativeQuery(
            """
            select m.number as member, r.machine_id as machine
            from member m
            left join lateral (
              select e.id, e.created_at from entry e
              where e.member_id = m.id and e.kind = 'report' and e.state in ('live', 'waiting')
              order by e.created_at desc limit :most) latest on true
            left join report r on r.id = latest.id
            where m.id = :member
            order by latest.created_at desc nulls last\
            """,
            Use.class)
        .setParameter("member", memberId)
        .setParameter("most", most)
        .getResultList();
  }

  /** Live reports by number. */
  List<ReportBrief> briefs(Collection<Long> numbers) {
    return getEntityManager()
        .createQuery(
            """
            select e.number, e.id, m.id, m.handle, r.laser, r.work
            from ReportEntity r
            join r.entry e
            join Member m on m.id = e.memberId
            where e.number in :numbers and e.state = EntryState.LIVE\
            """,
            Object[].class)
        .setParameter("numbers", numbers)
        .getResultStream()
        .map(
            row ->
                new ReportBrief(
                    (Long) row[0],
                    (UUID) row[1],
                    new Entry.Author((UUID) row[2], (String) row[3]),
                    ((LaserColumns) row[4]).toLaser(),
                    ((WorkColumns) row[5]).toWork()))
        .toList();
  }

  /** A member's reports in any state, newest first. */
  List<EntryEntity> postedBy(UUID memberId, Place place) {
    return getEntityManager()
        .createQuery(
            """
            select e from EntryEntity e
            where e.memberId = :member and e.kind = EntryKind.REPORT
              and (e.createdAt, e.number) < (:at, :number)
            order by e.createdAt desc, e.number desc\
            """,
            EntryEntity.class)
        .setParameter("member", memberId)
        .setParameter("at", place.time(0))
        .setParameter("number", place.number(1))
        .setFirstResult(place.from())
        .setMaxResults(place.most())
        .getResultList();
  }

  /** Live repeats of a report, oldest first. */
  List<UUID> repeatsOf(UUID id, int most) {
    return getEntityManager()
        .createQuery(
            """
            select e.id from ReportEntity r join r.entry e
            where r.repeatOf = :id and e.state = EntryState.LIVE
            order by e.number\
            """,
            UUID.class)
        .setParameter("id", id)
        .setMaxResults(most)
        .getResultList();
  }

  /**
   * What one member's latest repeat came to.
   *
   * @param effect code
   */
  record Outcome(UUID member, String effect) {}

  /** Of everybody but the author of the original. */
  List<Outcome> triedByOthers(UUID id) {
    return session()
        .createNativeQuery(
            """
            select distinct on (e.member_id) e.member_id, t.effect
            from report r join entry e on e.id = r.id join trial t on t.report_id = r.id
            where r.repeat_of = :id and e.state = 'live'
              and e.member_id <> (select o.member_id from entry o where o.id = :id)
            order by e.member_id, e.number desc, case t.effect when 'right' then 0 else 1 end,
              t.position\
            """,
            Outcome.class)
        .setParameter("id", id)
        .getResultList();
  }

  private Session session() {
    return getEntityManager().unwrap(Session.class);
  }
}
