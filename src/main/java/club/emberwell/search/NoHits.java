package club.emberwell.search;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.Coded;
import club.emberwell.search.SearchResult.Suggestion;
import club.emberwell.search.match.QueryParts;
import club.emberwell.search.match.TextQuery;
import club.emberwell.search.match.Words;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.RangeField;
import club.emberwell.search.query.SearchQuery;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.apache.lucene.search.IndexSearcher;

/** Finds the ways out of an empty result: what to drop, or what to widen, with its count. */
final class NoHits {
  private static final int MOST = 6;

  private final SearchQuery query;
  private final FacetCounts counts;
  private final Vocabulary vocabulary;
  private final IndexSearcher searcher;
  private final List<Suggestion> found = new ArrayList<>();

  private NoHits(
      SearchQuery query, FacetCounts counts, Vocabulary vocabulary, IndexSearcher searcher) {
    this.query = query;
    this.counts = counts;
    this.vocabulary = vocabulary;
    this.searcher = searcher;
  }

  static List<Suggestion> suggestions(
      SearchQuery query, FacetCounts counts, Vocabulary vocabulary, IndexSearcher searcher)
      throws IOException {
    if (counts.reports() > 0 || query.isEverything()) {
      return List.of();
    }
    NoHits help = new NoHits(query, counts, vocabulary, searcher);
    help.dropFacets();
    help.dropRanges();
    help.dropText();
    help.widen();
    if (help.found.isEmpty()) {
      help.add("drop-all", "everything", SearchQuery.everything().withSize(query.size()));
    }
    return help.found.stream()
        .sorted(Comparator.comparingInt(Suggestion::reports).reversed())
        .limit(MOST)
        .toList();
  }

  private void dropFacets() {
    for (String code : query.facets().keySet()) {
      Optional<Facet> facet = Coded.of(Facet.class, code);
      int reports = facet.map(f -> counts.without().getOrDefault(f, 0)).orElse(0);
      if (reports > 0) {
        String label = describe(facet.get(), query.facets().get(code));
        found.add(new Suggestion("drop-facet", label, query.withFacet(code, List.of()), reports));
      }
    }
  }

  private String describe(Facet facet, List<String> values) {
    List<String> labels =
        values.stream().map(value -> FacetValues.label(facet, value, vocabulary)).toList();
    return facet.label() + ": " + String.join(", ", labels);
  }

  private void dropRanges() throws IOException {
    for (String stem : query.ranges().keySet()) {
      Optional<RangeField> range = RangeField.of(stem);
      if (range.isPresent()) {
        add("drop-range", range.get().label(), query.withRange(stem, null));
      }
    }
  }

  private void dropText() throws IOException {
    if (query.text().isEmpty()) {
      return;
    }
    List<String> missing =
        TextQuery.of(vocabulary, searcher.getIndexReader(), query.text()).missing();
    List<String> words = new ArrayList<>(new Words(vocabulary.folding()).wanted(query.text()));
    words.removeAll(missing);
    if (!missing.isEmpty() && !words.isEmpty()) {
      add("drop-words", String.join(" ", missing), query.withText(String.join(" ", words)));
    }
    add("drop-text", query.text(), query.withText(""));
  }

  private void widen() throws IOException {
    for (Facet facet : Facet.values()) {
      List<String> values = query.facets().getOrDefault(facet.code(), List.of());
      if (facet.vocabulary().isEmpty()) {
        continue;
      }
      for (String value : values) {
        List<Term> path = vocabulary.path(facet.vocabulary().get(), value);
        if (path.size() > 1) {
          Term parent = path.get(path.size() - 2);
          List<String> wider = new ArrayList<>(values);
          wider.remove(value);
          wider.add(parent.slug());
          add("widen", parent.label(), query.withFacet(facet.code(), wider));
        }
      }
    }
  }

  private void add(String kind, String label, SearchQuery other) throws IOException {
    QueryParts parts = QueryParts.of(other, vocabulary, searcher.getIndexReader());
    int reports = SearchPass.count(searcher, parts);
    if (reports > 0) {
      found.add(new Suggestion(kind, label, other, reports));
    }
  }
}
