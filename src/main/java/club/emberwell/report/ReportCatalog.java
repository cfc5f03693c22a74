package club.emberwell.report;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.TermKind;

/** What reports need of the catalog. */
public interface ReportCatalog {
  /** Everything known now; immutable. */
  Catalog snapshot();

  /** Keeps words that matched nothing for a moderator, in the caller's transaction. */
  void queueUnfiled(TermKind kind, String written);
}
