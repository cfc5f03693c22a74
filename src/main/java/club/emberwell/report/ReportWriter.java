package club.emberwell.report;

import club.emberwell.bench.StoredJson;
import club.emberwell.catalog.CatalogService;
import club.emberwell.catalog.TermKind;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.ReportRevisionEntity.Cause;
import jakarta.enterprise.context.ApplicationScoped;

/**
 * The one door through which reports change: each change goes with its revision and its change row,
 * in the caller's transaction.
 */
@ApplicationScoped
class ReportWriter {
  private static final String ENTITY = "report";

  private final ReportRepository reports;
  private final TrialRepository trials;
  private final ReportRevisionRepository revisions;
  private final StoredChangeLog changes;
  private final CatalogService catalog;

  ReportWriter(
      ReportRepository reports,
      TrialRepository trials,
      ReportRevisionRepository revisions,
      StoredChangeLog changes,
      CatalogService catalog) {
    this.reports = reports;
    this.trials = trials;
    this.revisions = revisions;
    this.changes = changes;
    this.catalog = catalog;
  }

  void add(
      ReportEntity report,
      WrittenReport written,
      NumberStyle style,
      Interpretation read,
      Cause cause) {
    report.take(written, style, read, cause.at());
    reports.persistAndFlush(report);
    trials.add(report.id(), read.trials());
    queue(read);
    note(report, RevisionAction.POSTED, cause, StoredJson.write(read));
  }

  void rewrite(
      ReportEntity report,
      WrittenReport written,
      NumberStyle style,
      Interpretation read,
      Edit edit) {
    report.take(written, style, read, edit.cause().at());
    trials.replace(report.id(), read.trials());
    queue(read);
    note(report, edit.action(), edit.cause(), StoredJson.write(read));
  }

  /** Why a report is written again. */
  record Edit(RevisionAction action, Cause cause) {}

  void enter(ReportEntity report, ReportState state, RevisionAction action, Cause cause) {
    report.enter(state, cause.at());
    note(report, action, cause, "null");
  }

  /** Something that belongs to the report changed, its words did not. */
  void touch(ReportEntity report, RevisionAction action, Cause cause) {
    report.touch(cause.at());
    note(report, action, cause, "null");
  }

  private void note(ReportEntity report, RevisionAction action, Cause cause, String interpreted) {
    revisions.persist(new ReportRevisionEntity(report, action, cause, interpreted));
    revisions.flush();
    changes.add(ENTITY, report.id());
  }

  private void queue(Interpretation read) {
    queue(TermKind.MATERIAL, read.work().material());
    queue(TermKind.COATING, read.work().coating());
    queue(TermKind.COLOUR, read.work().colour());
  }

  private void queue(TermKind kind, Filed filed) {
    if (filed.waits()) {
      catalog.queueUnfiled(kind, filed.written());
    }
  }
}
