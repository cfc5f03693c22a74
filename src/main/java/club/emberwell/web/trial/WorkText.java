package club.emberwell.web.trial;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.ReportSnapshot;
import java.util.ArrayList;
import java.util.List;

/** What was worked on, in one line. */
public final class WorkText {
  private WorkText() {}

  /** "Birch plywood, 3 mm" or "Stainless steel / Powder coat / Navy"; unfiled words in quotes. */
  public static String of(ReportSnapshot report, Vocabulary vocabulary, UnitPreferences reader) {
    List<String> parts = new ArrayList<>();
    parts.add(
        label(
            vocabulary,
            TermKind.MATERIAL,
            report.work().material().slug(),
            report.work().material().written()));
    if (report.work().coating().written() != null) {
      parts.add(
          label(
              vocabulary,
              TermKind.COATING,
              report.work().coating().slug(),
              report.work().coating().written()));
    }
    if (report.work().colour().written() != null) {
      parts.add(
          label(
              vocabulary,
              TermKind.COLOUR,
              report.work().colour().slug(),
              report.work().colour().written()));
    }
    String work = String.join(" / ", parts);
    return report.work().thicknessMm() == null
        ? work
        : work
            + ", "
            + QuantityPrinter.print(report.work().thicknessMm(), QuantityKind.THICKNESS, reader);
  }

  private static String label(Vocabulary vocabulary, TermKind kind, String slug, String written) {
    return slug == null
        ? "“" + written + "”"
        : vocabulary.successor(kind, slug).map(Term::label).orElse(written);
  }
}
