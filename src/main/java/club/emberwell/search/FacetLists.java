package club.emberwell.search;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.search.SearchResult.FacetList;
import club.emberwell.search.SearchResult.FacetValue;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** Turns counts by index value into lists for people: labels, order, trees. */
final class FacetLists {
  private static final Comparator<FacetValue> FREQUENT =
      Comparator.comparingInt(FacetValue::count)
          .reversed()
          .thenComparing(FacetValue::label, String.CASE_INSENSITIVE_ORDER)
          .thenComparing(FacetValue::value);

  private final SearchQuery query;
  private final FacetCounts counts;
  private final Vocabulary vocabulary;

  private FacetLists(SearchQuery query, FacetCounts counts, Vocabulary vocabulary) {
    this.query = query;
    this.counts = counts;
    this.vocabulary = vocabulary;
  }

  static List<FacetList> of(SearchQuery query, FacetCounts counts, Vocabulary vocabulary) {
    FacetLists lists = new FacetLists(query, counts, vocabulary);
    return Stream.of(Facet.values()).map(lists::list).toList();
  }

  private FacetList list(Facet facet) {
    Map<String, Integer> found = counts.byFacet().get(facet);
    Set<String> selected = Set.copyOf(query.facets().getOrDefault(facet.code(), List.of()));
    if (facet.vocabulary().isPresent()) {
      return new FacetList(facet, tree(facet, found, selected), 0);
    }
    Set<String> values = new LinkedHashSet<>(FacetValues.fixed(facet).keySet());
    boolean open = values.isEmpty();
    values.addAll(found.keySet());
    values.addAll(selected);
    List<FacetValue> all = new ArrayList<>();
    for (String value : values) {
      if (found.containsKey(value) || selected.contains(value)) {
        all.add(value(facet, value, found.getOrDefault(value, 0), selected));
      }
    }
    return open ? frequent(facet, all) : new FacetList(facet, List.copyOf(all), 0);
  }

  private static FacetList frequent(Facet facet, List<FacetValue> all) {
    all.sort(FREQUENT);
    List<FacetValue> shown = new ArrayList<>();
    for (FacetValue value : all) {
      if (shown.size() < SearchLimits.FACET_VALUES || value.selected()) {
        shown.add(value);
      }
    }
    return new FacetList(facet, List.copyOf(shown), all.size() - shown.size());
  }

  private FacetValue value(Facet facet, String value, int count, Set<String> selected) {
    String label = FacetValues.label(facet, value, vocabulary);
    return new FacetValue(value, label, count, selected.contains(value), null, 0);
  }

  // A report has one material, so a branch's count is the sum over what is on it.
  private List<FacetValue> tree(Facet facet, Map<String, Integer> found, Set<String> selected) {
    TermKind kind = facet.vocabulary().orElseThrow();
    Map<String, Integer> sums = new HashMap<>();
    Set<String> loose = new LinkedHashSet<>(selected);
    found.forEach(
        (value, count) -> {
          List<Term> path = vocabulary.path(kind, value);
          path.forEach(term -> sums.merge(term.slug(), count, Integer::sum));
          if (path.isEmpty()) {
            loose.add(value);
          }
        });
    for (String value : selected) {
      vocabulary.path(kind, value).forEach(term -> sums.putIfAbsent(term.slug(), 0));
    }
    List<FacetValue> values = new ArrayList<>();
    addBranch(values, kind, null, 0, sums, selected);
    values.forEach(value -> loose.remove(value.value()));
    loose.stream()
        .map(value -> value(facet, value, found.getOrDefault(value, 0), selected))
        .sorted(FREQUENT)
        .forEach(values::add);
    return List.copyOf(values);
  }

  private void addBranch(
      List<FacetValue> values,
      TermKind kind,
      String parent,
      int depth,
      Map<String, Integer> sums,
      Set<String> selected) {
    vocabulary.children(kind, parent).stream()
        .filter(term -> sums.containsKey(term.slug()))
        .map(
            term ->
                new FacetValue(
                    term.slug(),
                    term.label(),
                    sums.get(term.slug()),
                    selected.contains(term.slug()),
                    parent,
                    depth))
        .sorted(FREQUENT)
        .forEach(
            value -> {
              values.add(value);
              addBranch(values, kind, value.value(), depth + 1, sums, selected);
            });
  }
}
