package club.emberwell.search.query;

import club.emberwell.catalog.Vocabulary;
import java.util.ArrayList;
import java.util.List;

/** A search in the words of a person. */
public final class QueryLabel {
  private QueryLabel() {}

  /**
   * E.g. {@code "halo", Slate or Cork, Diode, Speed up to 50 mm/s}; "Everything" where nothing
   * narrows.
   */
  public static String of(SearchQuery query, Vocabulary vocabulary) {
    List<String> parts = new ArrayList<>();
    if (!query.text().isEmpty()) {
      parts.add("“" + query.text() + "”");
    }
    for (Facet facet : Facet.values()) {
      query.facets().getOrDefault(facet.code(), List.of()).stream()
          .map(value -> FacetValues.label(facet, value, vocabulary))
          .reduce((some, other) -> some + " or " + other)
          .ifPresent(parts::add);
    }
    query
        .ranges()
        .forEach((stem, limits) -> RangeField.of(stem).ifPresent(f -> parts.add(range(f, limits))));
    return parts.isEmpty() ? "Everything" : String.join(", ", parts);
  }

  private static String range(RangeField field, SearchQuery.Limits limits) {
    String from = SearchQueryCodec.written(field, limits.min());
    String to = SearchQueryCodec.written(field, limits.max());
    if (from.isEmpty()) {
      return field.label() + " up to " + to;
    }
    return field.label() + " from " + from + (to.isEmpty() ? "" : " to " + to);
  }
}
