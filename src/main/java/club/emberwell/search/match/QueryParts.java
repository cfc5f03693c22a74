package club.emberwell.search.match;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.remark.Coded;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.RangeField;
import club.emberwell.search.query.SearchQuery;
import java.io.IOException;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.lucene.document.DoublePoint;
import org.apache.lucene.index.IndexReader;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermInSetQuery;
import org.apache.lucene.util.BytesRef;

/**
 * A search taken apart: what every trial must match, and the index values chosen in each facet.
 *
 * @param base text and ranges
 * @param chosen by facet, with everything below a chosen material, coating or colour
 * @param guesses words the index does not hold, with those taken instead
 */
public record QueryParts(
    Query base, Map<Facet, Set<String>> chosen, Map<String, Set<String>> guesses) {

  public static QueryParts of(SearchQuery query, Vocabulary vocabulary, IndexReader reader)
      throws IOException {
    TextQuery.Result text = TextQuery.of(vocabulary, reader, query.text());
    BooleanQuery.Builder base = new BooleanQuery.Builder();
    base.add(text.query(), Occur.MUST);
    query
        .ranges()
        .forEach(
            (stem, limits) ->
                RangeField.of(stem).ifPresent(f -> base.add(range(f, limits), Occur.FILTER)));
    Map<Facet, Set<String>> chosen = new EnumMap<>(Facet.class);
    query
        .facets()
        .forEach(
            (code, values) ->
                Coded.of(Facet.class, code)
                    .filter(facet -> !values.isEmpty())
                    .ifPresent(f -> chosen.put(f, expand(f, values, vocabulary))));
    return new QueryParts(base.build(), chosen, text.guesses());
  }

  private static Query range(RangeField field, SearchQuery.Limits limits) {
    return DoublePoint.newRangeQuery(
        field.field(), RangeField.lowest(limits), RangeField.highest(limits));
  }

  /** A chosen branch of a tree means everything on it. */
  public static Set<String> expand(Facet facet, Collection<String> values, Vocabulary vocabulary) {
    Set<String> codes = new LinkedHashSet<>();
    for (String value : values) {
      Optional<String> itself = facet.vocabulary().flatMap(kind -> FacetValues.itselfOf(value));
      codes.add(itself.orElse(value));
      if (itself.isEmpty()) {
        facet.vocabulary().ifPresent(kind -> codes.addAll(vocabulary.descendants(kind, value)));
      }
    }
    return codes;
  }

  /** Trials that match everything. */
  public Query matching() {
    BooleanQuery.Builder all = new BooleanQuery.Builder().add(base, Occur.MUST);
    chosen.forEach((facet, codes) -> all.add(oneOf(facet, codes), Occur.FILTER));
    return all.build();
  }

  /** Trials that miss at most one facet's choice: enough for hits and for every facet's counts. */
  public Query candidates() {
    if (chosen.size() < 2) {
      return base;
    }
    BooleanQuery.Builder most = new BooleanQuery.Builder();
    most.setMinimumNumberShouldMatch(chosen.size() - 1);
    chosen.forEach((facet, codes) -> most.add(oneOf(facet, codes), Occur.SHOULD));
    return new BooleanQuery.Builder().add(base, Occur.MUST).add(most.build(), Occur.FILTER).build();
  }

  private static Query oneOf(Facet facet, Collection<String> codes) {
    List<BytesRef> terms = codes.stream().map(BytesRef::new).toList();
    return new TermInSetQuery(facet.field(), terms);
  }
}
