package club.emberwell.report;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.hibernate.FlushMode;
import org.hibernate.Session;

/** Rows that snapshots of reports are made of. */
@ApplicationScoped
class SnapshotRepository {
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

  private final Session db;

  SnapshotRepository(Session db) {
    this.db = db;
  }

  /** A report beside what its snapshot takes from other tables. */
  record Named(ReportEntity report, ReportNames names) {}

  List<Named> named(Collection<UUID> ids) {
    return db.createQuery(WITH_NAMES.concat("where r.id in :ids"), Object[].class)
        .setParameter("ids", ids)
        .getResultStream()
        .map(SnapshotRepository::named)
        .toList();
  }

  /** When the rows of a report were written last, as the database numbers its transactions. */
  record Stamp(UUID id, String written) {}

  /**
   * A stamp that is another one after any change of what a snapshot is made of, also where another
   * server begins to number its transactions.
   */
  Map<UUID, String> stamps(Collection<UUID> ids) {
    return db.createNativeQuery(
            """
            select e.id,
              concat_ws(' ', (select epoch from history_epoch), e.xmin, r.xmin, m.handle, mc.xmin,
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
    return db.createQuery(
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
        .map(SnapshotRepository::named)
        .toList();
  }

  /** The same of these numbers. */
  List<Named> namedLive(Collection<Long> numbers) {
    return db.createQuery(
            WITH_NAMES.concat(
                """
                where e.kind = EntryKind.REPORT and e.state = EntryState.LIVE
                  and e.number in :numbers
                order by e.number\
                """),
            Object[].class)
        .setParameter("numbers", numbers)
        .getResultStream()
        .map(SnapshotRepository::named)
        .toList();
  }

  /** Those whose authors are not named in data, by what they said then or say now. */
  Set<UUID> unnamed(Collection<UUID> ids) {
    return Set.copyOf(
        db.createQuery(
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
    db.setDefaultReadOnly(true);
    db.setHibernateFlushMode(FlushMode.MANUAL);
  }

  private static Named named(Object[] row) {
    return new Named((ReportEntity) row[0], (ReportNames) row[1]);
  }
}
