package club.emberwell.report;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.TermKind;
import io.quarkus.arc.DefaultBean;
import jakarta.enterprise.context.ApplicationScoped;

/** The catalog as it is delivered, until one that moderators can change is there. */
@DefaultBean
@ApplicationScoped
class CatalogOfFiles implements ReportCatalog {
  private final Catalog catalog = CatalogFiles.catalog();

  @Override
  public Catalog snapshot() {
    return catalog;
  }

  @Override
  public void queueUnfiled(TermKind kind, String written) {
    // the words stay with the report; nobody files them here
  }
}
