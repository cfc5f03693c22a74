package club.emberwell.report;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.LockModeType;
import jakarta.persistence.Tuple;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.Session;

/** Rows of reports. */
@ApplicationScoped
class ReportRepository implements PanacheRepositoryBase<ReportEntity, UUID> {
  private static final String WITH_NAMES =
      """
      select r, new club.emberwell.report.ReportNames(m.number, m.handle, mc.number, mc.name,
          (select count(p) from PhotoEntity p where p.reportId = r.id and p.hiddenAt is null))
      from ReportEntity r
      join Member m on m.id = r.memberId
      left join MachineEntity mc on mc.id = r.machineId
      """;

  /** A report beside what its snapshot takes from other tables. */
  record Named(ReportEntity report, ReportNames names) {}

  /** Held until the transaction ends, so that versions are counted one by one. */
  Optional<ReportEntity> locked(UUID id) {
    return findByIdOptional(id, LockModeType.PESSIMISTIC_WRITE);
  }

  /** Waits until nobody else is posting under this id. */
  void awaitTurn(UUID id) {
    session()
        .createNativeQuery(
            "select cast(pg_advisory_xact_lock(hashtextextended(:id, 0)) as text)", String.class)
        .setParameter("id", "report " + id)
        .getSingleResult();
  }

  List<Named> named(Collection<UUID> ids) {
    return getEntityManager()
        .createQuery(WITH_NAMES + " where r.id in :ids", Object[].class)
        .setParameter("ids", ids)
        .getResultStream()
        .map(ReportRepository::named)
        .toList();
  }

  List<Named> namedLiveAfter(long number, int most) {
    return getEntityManager()
        .createQuery(
            WITH_NAMES + " where r.state = 'LIVE' and r.number > :number order by r.number",
            Object[].class)
        .setParameter("number", number)
        .setMaxResults(most)
        .getResultStream()
        .map(ReportRepository::named)
        .toList();
  }

  private static Named named(Object[] row) {
    return new Named((ReportEntity) row[0], (ReportNames) row[1]);
  }

  /** Another report of this member that says the same since then, the newest. */
  Optional<UUID> sameWords(UUID memberId, String writtenHash, Instant since) {
    return getEntityManager()
        .createQuery(
            "select r.id from ReportEntity r where r.memberId = :member and r.writtenHash = :hash"
                + " and r.createdAt >= :since and r.state <> 'WITHDRAWN' order by r.createdAt desc",
            UUID.class)
        .setParameter("member", memberId)
        .setParameter("hash", writtenHash)
        .setParameter("since", since)
        .setMaxResults(1)
        .getResultStream()
        .findFirst();
  }

  /** Ids of a member's newest reports that were neither withdrawn nor removed. */
  List<UUID> latestOf(UUID memberId, int most) {
    return getEntityManager()
        .createQuery(
            "select r.id from ReportEntity r where r.memberId = ?1 and r.state in ?2"
                + " order by r.createdAt desc, r.number desc",
            UUID.class)
        .setParameter(1, memberId)
        .setParameter(2, List.of(ReportState.LIVE, ReportState.WAITING))
        .setMaxResults(most)
        .getResultList();
  }

  /** Ids of a member's reports in any state, newest first. */
  List<UUID> postedBy(UUID memberId, int from, int most) {
    return getEntityManager()
        .createQuery(
            "select r.id from ReportEntity r where r.memberId = :member"
                + " order by r.createdAt desc, r.number desc",
            UUID.class)
        .setParameter("member", memberId)
        .setFirstResult(from)
        .setMaxResults(most)
        .getResultList();
  }

  /** Live repeats of a report, oldest first. */
  List<UUID> repeatsOf(UUID id, int most) {
    return getEntityManager()
        .createQuery(
            "select r.id from ReportEntity r where r.repeatOf = :id and r.state = 'LIVE'"
                + " order by r.number",
            UUID.class)
        .setParameter("id", id)
        .setMaxResults(most)
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
            "update report_reading set catalog_version = greatest(catalog_version, :catalog),"
                + " interpreter_version = :interpreter")
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
   * @param column {@code material}, {@code coating} or {@code colour}
   */
  List<Filed> words(String column) {
    return session()
        .createQuery(
            "select distinct new club.emberwell.report.Filed(r.%1$s, r.%1$sWritten)"
                    .formatted(column)
                + " from ReportEntity r where r.%1$sWritten is not null".formatted(column),
            Filed.class)
        .getResultList();
  }

  List<UUID> with(String column, Filed word) {
    return session()
        .createQuery(
            "select r.id from ReportEntity r where r.%1$sWritten = :written".formatted(column)
                + " and r.%1$s is not distinct from :slug".formatted(column),
            UUID.class)
        .setParameter("written", word.written())
        .setParameter("slug", word.slug())
        .getResultList();
  }

  private Session session() {
    return getEntityManager().unwrap(Session.class);
  }
}
