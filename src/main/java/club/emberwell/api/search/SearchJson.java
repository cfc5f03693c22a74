package club.emberwell.api.search;

import club.emberwell.api.view.CautionJson;
import club.emberwell.api.view.ReportJson;
import club.emberwell.search.SearchResult;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.SearchQueryCodec;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What a search found.
 *
 * @param total matching reports
 * @param trials their matching trials
 * @param guesses typed words that no report holds, with the words taken instead
 * @param suggestions where nothing was found: ways to find something
 * @param cautions of what is asked for, typed or chosen; none says nothing about safety
 */
@Schema(name = "FoundReports")
record SearchJson(
    int total,
    int trials,
    @JsonUnwrapped Asked asked,
    List<Hit> hits,
    @JsonUnwrapped Facets narrowing,
    Map<String, Set<String>> guesses,
    List<Way> suggestions,
    List<CautionJson> cautions) {

  /**
   * What was searched for.
   *
   * @param query the address of this search in its one canonical form
   * @param next cursor of the next page; left out at the end
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Asked(int page, int size, String sort, String query, @Nullable String next) {}

  /**
   * What the search can be narrowed by.
   *
   * @param facets by code; a facet's counts ignore its own choice
   * @param unlisted by facet code: how many further values are not listed
   */
  record Facets(Map<String, List<Value>> facets, Map<String, Integer> unlisted) {
    static Facets of(List<SearchResult.FacetList> lists) {
      Map<String, List<Value>> facets = new LinkedHashMap<>();
      Map<String, Integer> unlisted = new LinkedHashMap<>();
      for (SearchResult.FacetList list : lists) {
        facets.put(list.facet().code(), values(list));
        if (list.more() > 0) {
          unlisted.put(list.facet().code(), list.more());
        }
      }
      return new Facets(facets, unlisted);
    }
  }

  /**
   * A found report.
   *
   * @param matchingTrials positions of its trials that match, right ones of the best quality first
   */
  @Schema(name = "ReportHit")
  record Hit(@JsonUnwrapped ReportJson report, List<Integer> matchingTrials) {}

  /**
   * One value of a facet.
   *
   * @param parent the value above it in the tree
   * @param depth 0 at the top of the tree
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "FacetValue")
  record Value(
      String value,
      String label,
      int count,
      boolean selected,
      @Nullable String parent,
      @Nullable Integer depth) {}

  /**
   * A way out of an empty result.
   *
   * @param kind drop-facet, drop-range, drop-text, drop-words, widen or drop-all
   * @param query the address of that search
   * @param total reports it finds
   */
  @Schema(name = "WayOut")
  record Way(String kind, String label, String query, int total) {}

  static SearchJson of(SearchService.Page page, List<Hit> hits, List<CautionJson> cautions) {
    SearchResult result = page.result();
    return new SearchJson(
        result.totalReports(),
        result.totalTrials(),
        new Asked(
            result.query().page(),
            result.query().size(),
            result.order().code(),
            SearchQueryCodec.write(result.query()),
            page.next()),
        hits,
        Facets.of(result.facets()),
        result.guesses(),
        result.suggestions().stream().map(SearchJson::way).toList(),
        cautions);
  }

  private static List<Value> values(SearchResult.FacetList list) {
    boolean tree = list.values().stream().anyMatch(value -> value.depth() > 0);
    return list.values().stream()
        .map(
            value ->
                new Value(
                    value.value(),
                    value.label(),
                    value.count(),
                    value.selected(),
                    value.parent(),
                    tree ? value.depth() : null))
        .toList();
  }

  private static Way way(SearchResult.Suggestion suggestion) {
    return new Way(
        suggestion.kind(),
        suggestion.label(),
        SearchQueryCodec.write(suggestion.query()),
        suggestion.reports());
  }
}
