package club.emberwell.web.find;

import club.emberwell.search.SearchResult.FacetValue;
import club.emberwell.search.query.Facet;
import club.emberwell.web.frame.Field.Option;
import java.util.List;
import java.util.stream.Stream;

/**
 * A facet as one field to choose from, for pages that narrow by a few of them.
 *
 * @param options each with how many results it would leave
 */
public record FacetChoice(String code, String label, List<Option> options) {
  public static FacetChoice of(Facet facet, Stream<FacetValue> values) {
    return new FacetChoice(
        facet.code(),
        facet.label(),
        values
            .map(v -> new Option(v.value(), v.label() + " (" + v.count() + ")", v.selected()))
            .toList());
  }
}
