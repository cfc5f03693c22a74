package club.emberwell.search.index;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.PowerClass;
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
    return switch (facet) {
      case SOURCE -> report.laser().source().code();
      case POWER_CLASS -> PowerClass.ofRated(report.laser().ratedPowerW()).code();
      case BAND -> report.laser().band().code();
      case REGIME -> report.laser().regime().code();
      case MATERIAL -> filed(TermKind.MATERIAL, report.work().material());
      case COATING -> filed(TermKind.COATING, report.work().coating());
      case COLOUR -> filed(TermKind.COLOUR, report.work().colour());
      case PROCESS -> report.process().code();
      case EFFECT -> trial.effect().code();
      case MOTION ->
          report.laser().motion() == null ? Facet.NOT_GIVEN : report.laser().motion().code();
      case CONTROLLER_VERSION -> given(report.particulars().controllerVersion());
      case MEMBER -> given(report.author().handle());
    };
  }

  private String filed(TermKind kind, Filed word) {
    if (word.slug() == null) {
      return word.written() == null || word.written().isBlank() ? Facet.NOT_GIVEN : Facet.NOT_FILED;
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
