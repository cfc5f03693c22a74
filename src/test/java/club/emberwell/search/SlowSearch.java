package club.emberwell.search;

import club.emberwell.laser.Effect;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.search.index.FacetCodes;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.RangeField;
import club.emberwell.search.query.SearchQuery;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** What a search should find, by looking at everything: slow and obvious. Texts are left out. */
final class SlowSearch {
  private final List<ReportSnapshot> reports;
  private final FacetCodes codes = new FacetCodes(SearchFixture.WORDS);

  record Trial(ReportSnapshot report, int position) {
    TrialSnapshot trial() {
      return report.trials().get(position);
    }
  }

  SlowSearch(List<ReportSnapshot> reports) {
    this.reports = reports;
  }

  /** Matching trials, leaving one facet's choice out (null = none). */
  Set<Trial> matching(SearchQuery query, Facet leftOut) {
    Set<Trial> found = new HashSet<>();
    for (ReportSnapshot report : reports) {
      for (int i = 0; i < report.trials().size(); i++) {
        Trial trial = new Trial(report, i);
        if (inFacets(query, leftOut, trial) && inRanges(query, trial)) {
          found.add(trial);
        }
      }
    }
    return found;
  }

  private boolean inFacets(SearchQuery query, Facet leftOut, Trial trial) {
    for (Facet facet : Facet.values()) {
      List<String> chosen = query.facets().getOrDefault(facet.code(), List.of());
      if (facet == leftOut || chosen.isEmpty()) {
        continue;
      }
      Set<String> paths = valuesAlongTree(facet, trial);
      if (chosen.stream().noneMatch(paths::contains)) {
        return false;
      }
    }
    return true;
  }

  private static boolean inRanges(SearchQuery query, Trial trial) {
    return query.ranges().entrySet().stream()
        .allMatch(
            entry ->
                RangeField.within(
                    RangeField.of(entry.getKey())
                        .orElseThrow()
                        .valueOf(trial.report(), trial.trial()),
                    entry.getValue()));
  }

  /** A trial's value and everything above it. */
  private Set<String> valuesAlongTree(Facet facet, Trial trial) {
    String code = codes.code(facet, trial.report(), trial.trial());
    Set<String> values = new HashSet<>();
    values.add(code);
    facet
        .vocabulary()
        .ifPresent(
            kind -> SearchFixture.WORDS.path(kind, code).forEach(term -> values.add(term.slug())));
    return values;
  }

  /** Distinct reports by value, a facet's own choice left out. */
  Map<String, Integer> counts(SearchQuery query, Facet facet) {
    Map<String, Set<Long>> byValue = new TreeMap<>();
    for (Trial trial : matching(query, facet)) {
      for (String value : valuesAlongTree(facet, trial)) {
        byValue.computeIfAbsent(value, key -> new HashSet<>()).add(trial.report().number());
      }
    }
    Map<String, Integer> counts = new TreeMap<>();
    byValue.forEach((value, numbers) -> counts.put(value, numbers.size()));
    return counts;
  }

  static int reports(Set<Trial> trials) {
    return (int) trials.stream().map(trial -> trial.report().number()).distinct().count();
  }

  /** The number by which {@link Order#QUALITY} orders a report. */
  static int quality(Set<Trial> matching, ReportSnapshot report) {
    return matching.stream()
        .filter(trial -> trial.report().equals(report))
        .map(Trial::trial)
        .filter(trial -> trial.effect() == Effect.RIGHT)
        .mapToInt(trial -> 10 + (trial.quality() == null ? 0 : trial.quality()))
        .max()
        .orElse(0);
  }
}
