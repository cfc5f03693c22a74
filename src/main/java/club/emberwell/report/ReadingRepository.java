package club.emberwell.report;

import club.emberwell.report.reading.Filed;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.persistence.Tuple;
import java.util.List;
import java.util.UUID;
import org.hibernate.Session;

/** How far stored reports were read, and which of them would be read otherwise now. */
@ApplicationScoped
class ReadingRepository {
  private final Session db;

  ReadingRepository(Session db) {
    this.db = db;
  }

  ReadingMark mark() {
    Tuple row =
        db.createNativeQuery(
                "select catalog_version, interpreter_version from report_reading", Tuple.class)
            .getSingleResult();
    return new ReadingMark(
        row.get(0, Number.class).longValue(), row.get(1, Number.class).intValue());
  }

  /** Never steps back: another node may be ahead. */
  void remember(ReadingMark reached) {
    db.createNativeMutationQuery(
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
    return db.createQuery(
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
    return db.createQuery(
            """
            select distinct new club.emberwell.report.reading.Filed(r.work.%1$s, r.work.%1$sWritten)
            from ReportEntity r where r.work.%1$sWritten is not null\
            """
                .formatted(column),
            Filed.class)
        .getResultList();
  }

  List<UUID> with(String column, Filed word) {
    return db.createQuery(
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
}
