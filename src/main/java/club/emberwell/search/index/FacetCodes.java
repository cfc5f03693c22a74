package club.emberwell.search.index;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.Filed;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchLimits;

/** The one value a trial has in each facet. */
public final class FacetCodes {
  private final Vocabulary vocabulary;

  public FacetCodes(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  public String code(Facet facet, ReportSnapshot report, TrialSnapshot trial) {
    return facet
        .vocabulary()
        .map(kind -> filed(kind, report.work().word(facet.work().orElseThrow())))
        .orElseGet(() -> given(facet.of(report, trial)));
  }

  private String filed(TermKind kind, Filed word) {
    if (word.slug() == null) {
      String written = word.written();
      return written == null || written.isBlank() ? Facet.NOT_GIVEN : Facet.NOT_FILED;
    }
    return vocabulary.successor(kind, word.slug()).map(Term::slug).orElse(word.slug());
  }

  private static String given(String text) {
    if (text == null || text.isBlank()) {
      return Facet.NOT_GIVEN;
    }
    String plain = text.strip();
    return plain.length() > SearchLimits.VALUE ? plain.substring(0, SearchLimits.VALUE) : plain;
  }
}
