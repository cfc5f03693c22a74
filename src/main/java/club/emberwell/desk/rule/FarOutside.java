package club.emberwell.desk.rule;

import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.range.Range;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.search.index.IndexNotReady;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.stats.ModifiedZ;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Compares the doses of a report's right trials with what others used for the same material,
 * process, wavelength band and regime. The author's own voice is among them: one voice of eight or
 * more moves a median little.
 */
@ApplicationScoped
class FarOutside {
  private final ReportSource reports;
  private final ConsensusService consensus;

  FarOutside(ReportSource reports, ConsensusService consensus) {
    this.reports = reports;
    this.consensus = consensus;
  }

  Optional<String> seen(Rule rule, Entry item) {
    if (item.kind() != EntryKind.REPORT) {
      return Optional.empty();
    }
    return reports.byIds(List.of(item.id())).stream()
        .findFirst()
        .filter(report -> report.work().material().slug() != null)
        .flatMap(report -> furthest(rule, report));
  }

  private Optional<String> furthest(Rule rule, ReportSnapshot report) {
    double[] doses = doses(report);
    Optional<Range> range = doses.length == 0 ? Optional.empty() : range(report);
    if (range.isEmpty()) {
      return Optional.empty();
    }
    double[] voices = range.get().dose().voices().values();
    if (voices.length < ModifiedZ.FEWEST || Arrays.stream(voices).anyMatch(v -> v <= 0)) {
      return Optional.empty();
    }
    ModifiedZ others = ModifiedZ.ofLogs(voices);
    double worst = 0;
    double at = 0;
    for (double dose : doses) {
      double z = others.score(Math.log(dose));
      if (Math.abs(z) > Math.abs(worst)) {
        worst = z;
        at = dose;
      }
    }
    return Math.abs(worst) > rule.threshold()
        ? Optional.of(sentence(report, at, worst, others))
        : Optional.empty();
  }

  private static String sentence(ReportSnapshot report, double dose, double z, ModifiedZ others) {
    boolean areal = report.process().doseKind() == DoseKind.AREAL;
    double median = Math.exp(others.median());
    String far = Math.abs(z) > 99 ? "over 99" : "%.1f".formatted(Math.abs(z));
    return "Right at %.3g %s, far %s the %.3g of %d members (modified z %s)."
        .formatted(
            dose,
            areal ? "J/mm\u00b2" : "J/mm",
            z > 0 ? "above" : "below",
            median,
            others.z().length,
            far);
  }

  private static double[] doses(ReportSnapshot report) {
    return report.trials().stream()
        .filter(t -> t.effect() == Effect.RIGHT)
        .map(t -> t.derived().dose(report.process().doseKind()))
        .filter(dose -> dose != null && dose > 0)
        .mapToDouble(Double::doubleValue)
        .toArray();
  }

  private Optional<Range> range(ReportSnapshot report) {
    SearchQuery query =
        SearchQuery.everything()
            .withFacet(Facet.MATERIAL.code(), List.of(report.work().material().slug()))
            .withFacet(Facet.PROCESS.code(), List.of(report.process().code()));
    String coating =
        report.work().coating().slug() == null ? Facet.NOT_GIVEN : report.work().coating().slug();
    query = query.withFacet(Facet.COATING.code(), List.of(coating));
    Regime regime = report.laser().regime();
    WavelengthBand band = report.laser().band();
    try {
      return consensus.ranges(query).stream()
          .filter(r -> r.key().regime() == regime && r.key().band() == band)
          .findFirst();
    } catch (IndexNotReady e) {
      // a node that has no index yet cannot compare; the other rules go on
      return Optional.empty();
    }
  }
}
