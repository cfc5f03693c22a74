package club.emberwell.report;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.Cause;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.NewEntry;
import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.Interpretation;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.report.reading.WrittenReport;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;

/** Stores what a report says of its own, beside its entry and in the caller's transaction. */
@ApplicationScoped
class ReportWriter {
  private final EntryLife life;
  private final ReportRepository reports;
  private final TrialRepository trials;
  private final CatalogService catalog;

  ReportWriter(
      EntryLife life, ReportRepository reports, TrialRepository trials, CatalogService catalog) {
    this.life = life;
    this.reports = reports;
    this.trials = trials;
    this.catalog = catalog;
  }

  ReportEntity add(
      Actor author, NewEntry made, WrittenReport written, NumberStyle style, Interpretation read) {
    ReportEntity report =
        new ReportEntity(life.begin(author, made, ReportEntity.words(written, read)));
    report.take(written, style, read);
    reports.persist(report);
    trials.add(made.id(), read.trials());
    reports.flush();
    queue(read, made.at() == null ? Instant.now() : made.at());
    return report;
  }

  void rewrite(
      ReportEntity report,
      WrittenReport written,
      NumberStyle style,
      Interpretation read,
      EntryAction action,
      Cause cause) {
    report.take(written, style, read);
    trials.replace(report.entry().id(), read.trials());
    queue(read, cause.at());
    life.rewritten(report.entry(), ReportEntity.words(written, read), action, cause);
  }

  private void queue(Interpretation read, Instant at) {
    for (WorkProperty property : WorkProperty.of(Shape.WORD)) {
      Filed filed = read.work().word(property);
      if (filed.waits()) {
        catalog.queueUnfiled(property.value().vocabulary(), filed.written(), at);
      }
    }
  }
}
