package club.emberwell.report;

import club.emberwell.bench.LaserColumns;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryEntity;
import club.emberwell.listing.Place;
import club.emberwell.report.reading.Filed;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.FlushMode;
import org.hibernate.Session;

/** Rows of reports. */
@ApplicationScoped
class ReportRepository implements PanacheRepositoryBase<ReportEntity, UUID> {
  private static final String WITH_NAMES =
      """
      select r, new club.emberwell.report.ReportNames(m.number, m.handle, mc.number, mc.name, mc.model,
          (select count(*) from EntryEntity p
            where p.parentId = r.id and p.kind = EntryKind.PHOTO and p.state = EntryState.LIVE),
          (select count(*) from EntryEntity c
            where c.parentId = r.id and c.kind = EntryKind.COMMENT and c.state = EntryState.LIVE))
      from ReportEntity r
      join fetch r.entry e
      join Member m on m.id = e.memberId
      left join MachineEntity mc on mc.id = r.machineId
      """;

  /** A report beside what its snapshot takes from other tables. */
  record Named(ReportEntity report, ReportNames names) {}

  /** A report with its entry. */
  Optional<ReportEntity> whole(UUID id) {
    return find("from ReportEntity r join fetch r.entry where r.id = ?1", id).firstResultOptional();
  }

  List<Named> named(Collection<UUID> ids) {
    return getEntityManager()
        .createQuery(WITH_NAMES.concat("where r.id in :ids"), Object[].class)
        .setParameter("ids", ids)
        .getResultStream()
        .map(ReportRepository::named)
        .toList();
  }

  /** When the rows of a report were written last, as the database numbers its transactions. */
  record Stamp(UUID id, String written) {}

  /** A stamp that is another one after any change of what a snapshot is made of. */
  Map<UUID, String> stamps(Collection<UUID> ids) {
    return session()
        .createNativeQuery(
            """
            select e.id,
              concat_ws(' ', e.xmin, r.xmin, m.handle, mc.xmin,
                (select string_agg(t.xmin::text, ',') from trial t where t.report_id = r.id),
                (select count(*) from entry p
                  where p.parent_id = r.id and p.kind = 'photo' and p.state = 'live'),
                (select count(*) from entry c
                  where c.parent_id = r.id and c.kind = 'comment' and c.state = 'live'))
            from report r
            join entry e on e.id = r.id
            join member m on m.id = e.member_id
            left join machine mc on mc.id = r.machine_id
            where r.id in (:ids)\
            """,
            Stamp.class)
        .setParameterList("ids", ids)
        .getResultStream()
        .collect(Collectors.toMap(Stamp::id, Stamp::written));
  }

  List<Named> namedLiveAfter(long number, int most) {
    return getEntityManager()
        .createQuery(
            WITH_NAMES.concat(
                """
                where e.kind = EntryKind.REPORT and e.state = EntryState.LIVE
                  and e.number > :number
                order by e.number\
                """),
            Object[].class)
        .setParameter("number", number)
        .setMaxResults(most)
        .getResultStream()
        .map(ReportRepository::named)
        .toList();
  }

  /** The same of these numbers. */
  List<Named> namedLive(Collection<Long> numbers) {
    return getEntityManager()
        .createQuery(
            WITH_NAMES.concat(
                """
                where e.kind = EntryKind.REPORT and e.state = EntryState.LIVE
                  and e.number in :numbers
                order by e.number\
                """),
            Object[].class)
        .setParameter("numbers", numbers)
        .getResultStream()
        .map(ReportRepository::named)
        .toList();
  }

  /** Those whose authors are not named in data, by what they said then or say now. */
  Set<UUID> unnamed(Collection<UUID> ids) {
    return Set.copyOf(
        getEntityManager()
            .createQuery(
                """
                select e.id from EntryEntity e join Member m on m.id = e.memberId
                where e.id in :ids and (e.named = false or m.named = false)\
                """,
                UUID.class)
            .setParameter("ids", ids)
            .getResultList());
  }

  /** Nothing that is read in this transaction is looked through for changes. */
  void onlyRead() {
    session().setDefaultReadOnly(true);
    session().setHibernateFlushMode(FlushMode.MANUAL);
  }

  private static Named named(Object[] row) {
    return new Named((ReportEntity) row[0], (ReportNames) row[1]);
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

  ReadingMark readingMark() {
    Tuple row =
        session()
            .createNativeQuery(
                "select catalog_version, interpreter_version from report_reading", Tuple.class)
            .getSingleResult();
    return new ReadingMark(
        row.get(0, Number.class).longValue(), row.get(1, Number.class).intValue());
  }

  /** Never steps back: another node may be ahead. */
  void remember(ReadingMark reached) {
    session()
        .createNativeMutationQuery(
            """
            update report_reading
               set catalog_version = greatest(catalog_version, :catalog),
                   interpreter_version = :interpreter\
            """)
        .setParameter("catalog", reached.catalogVersion())
        .setParameter("interpreter", reached.interpreterVersion())
        .executeUpdate();
  }

  List<UUID> readByOthers(int interpreterVersion) {
    return session()
        .createQuery(
            "select r.id from ReportEntity r where r.interpreterVersion <> :version", UUID.class)
        .setParameter("version", interpreterVersion)
        .getResultList();
  }

  /**
   * The distinct words of a kind with what they are filed as.
   *
   * @param column the code of its property
   */
  List<Filed> words(String column) {
    return session()
        .createQuery(
            """
            select distinct new club.emberwell.report.reading.Filed(r.work.%1$s, r.work.%1$sWritten)
            from ReportEntity r where r.work.%1$sWritten is not null\
            """
                .formatted(column),
            Filed.class)
        .getResultList();
  }

  List<UUID> with(String column, Filed word) {
    return session()
        .createQuery(
            """
            select r.id from ReportEntity r
            where r.work.%1$sWritten = :written and r.work.%1$s is not distinct from :slug\
            """
                .formatted(column),
            UUID.class)
        .setParameter("written", word.written())
        .setParameter("slug", word.slug())
        .getResultList();
  }

  private Session session() {
    return getEntityManager().unwrap(Session.class);
  }
}
