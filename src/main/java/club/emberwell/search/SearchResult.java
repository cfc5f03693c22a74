package club.emberwell.search;

import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What a search found.
 *
 * @param query what was asked
 * @param order in which the hits come
 * @param totalReports matching reports, not only those of this page
 * @param totalTrials their matching trials
 * @param hits of this page
 * @param facets in the order of {@link Facet}
 * @param guesses typed words that no report holds, each with the words taken instead
 * @param suggestions where nothing was found: ways to find something, most results first
 */
public record SearchResult(
    SearchQuery query,
    Order order,
    int totalReports,
    int totalTrials,
    List<Hit> hits,
    List<FacetList> facets,
    Map<String, Set<String>> guesses,
    List<Suggestion> suggestions) {

  /**
   * A found report.
   *
   * @param trials positions of its matching trials, right ones of the best quality first
   */
  public record Hit(ReportSnapshot report, List<Integer> trials) {}

  /**
   * The values of a facet.
   *
   * @param values most frequent first, fixed ones in their own order, trees parents first
   * @param more how many further values there are
   */
  public record FacetList(Facet facet, List<FacetValue> values, int more) {}

  /**
   * One value of a facet.
   *
   * @param count reports that have it (or something below it) among those that match all but this
   *     facet's choice
   * @param parent the value above it in the tree, or null
   * @param depth 0 at the top
   */
  public record FacetValue(
      String value, String label, int count, boolean selected, String parent, int depth) {
    /** Whether it leaves anything, or can be taken away. */
    public boolean offered() {
      return count > 0 || selected;
    }
  }

  /**
   * A way out of an empty result.
   *
   * @param kind {@code drop-facet}, {@code drop-range}, {@code drop-text}, {@code drop-words},
   *     {@code widen}, {@code drop-all}
   * @param label what it drops or widens to, in words
   * @param query the search to follow
   * @param reports how many it finds
   */
  public record Suggestion(String kind, String label, SearchQuery query, int reports) {}

  /** How many pages there are. */
  public int pages() {
    int all = (totalReports + query.size() - 1) / query.size();
    return Math.min(all, SearchLimits.PAGE + 1);
  }
}
