package club.emberwell.web.caution;

import club.emberwell.catalog.store.CatalogService;
import club.emberwell.laser.Process;
import club.emberwell.remark.Coded;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.WrittenWork;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Named;
import org.jspecify.annotations.Nullable;

/** The heaviest caution of what a form holds: settings are filled into forms, too. */
@Named("formMark")
@ApplicationScoped
public class FormMark {
  private static final String TIES = "ties.";

  private final CatalogService catalog;

  FormMark(CatalogService catalog) {
    this.catalog = catalog;
  }

  /** Null where no material and no coating stands in it, or where they have no caution. */
  public @Nullable MarkView of(Form form) {
    return MarkView.of(
        catalog
            .cautions()
            .asWritten(
                value(form, "material"),
                value(form, "coating"),
                Coded.of(Process.class, value(form, "process")).orElse(null)));
  }

  /** The heaviest caution of a work as its author wrote it; null where it has none. */
  public @Nullable MarkView ofWork(WrittenWork work) {
    return MarkView.of(ReportCautions.asWritten(work, catalog.cautions()));
  }

  /** Of the work, or of what an entry of talk is tied to. */
  private static String value(Form form, String name) {
    return form.find(name).or(() -> form.find(TIES + name)).map(Field::getValue).orElse("");
  }
}
