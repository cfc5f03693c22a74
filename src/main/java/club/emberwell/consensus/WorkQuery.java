package club.emberwell.consensus;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.ThicknessClass;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.consensus.range.WorkKey;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.Work;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.RangeField;
import club.emberwell.search.query.SearchQuery;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The search that finds one key and no other. */
public final class WorkQuery {
  /** Half a step of the wavelengths that share a range. */
  private static final double STEP = 1.005;

  private WorkQuery() {}

  /** The key alone. */
  public static SearchQuery of(RangeKey key, Vocabulary vocabulary) {
    return of(SearchQuery.everything(), key, vocabulary);
  }

  /** A search narrowed to one of the keys it met. */
  public static SearchQuery of(SearchQuery wide, RangeKey key, Vocabulary vocabulary) {
    SearchQuery narrow = sameLight(wide, key.process(), key.band(), key.regime());
    if (key.light().nm() > 0) {
      double nm = key.light().nm();
      narrow =
          narrow.withRange(
              RangeField.WAVELENGTH.stem(), new SearchQuery.Limits(nm / STEP, nm * STEP));
    }
    for (Map.Entry<Facet, WorkKey.Part> part : key.work().parts().entrySet()) {
      narrow =
          narrow.withFacet(
              part.getKey().code(), List.of(value(part.getKey(), part.getValue(), vocabulary)));
    }
    return narrow;
  }

  /**
   * The key of work that is only planned.
   *
   * @return empty where a word that counts is not filed yet: nobody knows what it is
   */
  static Optional<RangeKey> key(Work work, Laser laser, Vocabulary vocabulary) {
    Map<Facet, WorkKey.Part> parts = new LinkedHashMap<>();
    for (Facet facet : WorkKey.counted(work.process())) {
      WorkProperty property = facet.work().orElseThrow();
      if (facet.vocabulary().isPresent() && work.word(property).waits()) {
        return Optional.empty();
      }
      String value = planned(facet, property, work, vocabulary);
      parts.put(facet, new WorkKey.Part(value == null ? Facet.NOT_GIVEN : value, ""));
    }
    return Optional.of(
        new RangeKey(work.process(), RangeKey.Light.of(laser), laser.regime(), new WorkKey(parts)));
  }

  private static String planned(
      Facet facet, WorkProperty property, Work work, Vocabulary vocabulary) {
    if (facet == Facet.THICKNESS) {
      return Optional.ofNullable(work.thicknessMm())
          .flatMap(ThicknessClass::of)
          .map(ThicknessClass::code)
          .orElse(null);
    }
    String slug = work.word(property).slug();
    return slug == null
        ? null
        : facet.vocabulary().map(kind -> vocabulary.respondsAs(kind, slug)).orElse(slug);
  }

  /** A search that finds the work of a report, and more than that. */
  static SearchQuery around(ReportSnapshot report) {
    SearchQuery query =
        sameLight(
            SearchQuery.everything(),
            report.process(),
            report.laser().band(),
            report.laser().regime());
    String material = report.work().material().slug();
    String coating = report.work().coating().slug();
    if (coating != null) {
      return query.withFacet(Facet.COATING.code(), List.of(coating));
    }
    return material == null
        ? query.withFacet(Facet.MATERIAL.code(), List.of(Facet.NOT_FILED))
        : query.withFacet(Facet.MATERIAL.code(), List.of(material));
  }

  private static SearchQuery sameLight(
      SearchQuery wide, Process process, WavelengthBand band, Regime regime) {
    return wide.withFacet(Facet.PROCESS.code(), List.of(process.code()))
        .withFacet(Facet.BAND.code(), List.of(band.code()))
        .withFacet(Facet.REGIME.code(), List.of(regime.code()));
  }

  /** A word with others below it means itself here, unless they respond alike. */
  private static String value(Facet facet, WorkKey.Part part, Vocabulary vocabulary) {
    return facet
        .vocabulary()
        .filter(kind -> isBranch(kind, part.value(), vocabulary))
        .map(kind -> FacetValues.itself(part.value()))
        .orElse(part.value());
  }

  private static boolean isBranch(TermKind kind, String slug, Vocabulary vocabulary) {
    // a branch that responds alike stands for what grows on it
    boolean alike = vocabulary.term(kind, slug).filter(Term::respondsAlike).isPresent();
    return !alike && !vocabulary.children(kind, slug).isEmpty();
  }
}
