package club.emberwell.web.find;

import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.range.RangeView;
import club.emberwell.web.talk.AskPages;
import club.emberwell.web.talk.EntryLine;
import java.util.List;

/**
 * The search page in one state.
 *
 * @param text what stands in the box
 * @param hidden what a form must carry along so that typing keeps the facets
 * @param chips what is applied, each with the address without it
 * @param hazards cards that come before everything else
 * @param ranges the largest first; empty with a reason in {@code noRange}
 * @param talk questions and notices about the same
 * @param watch the search as a watch keeps it
 * @param previous address or null, the same for next
 */
record FindView(
    String text,
    List<Pair> hidden,
    List<Chip> chips,
    String clear,
    List<FacetView> facets,
    List<Hazard> hazards,
    List<String> problems,
    String found,
    RangeView range,
    List<RangeView> others,
    String noRange,
    String rangePage,
    List<HitView> hits,
    List<EntryLine> talk,
    String watch,
    List<Way> suggestions,
    List<String> guesses,
    List<Option> orders,
    List<Option> machines,
    String previous,
    String next,
    String pageOf) {

  /** A hidden form field. */
  record Pair(String name, String value) {}

  /** An applied limit. */
  record Chip(String label, String href) {}

  /** A way out of an empty result. */
  record Way(String label, String href, int reports) {}

  /** A prohibited or dangerous material, first of all. */
  record Hazard(String title, String text, String more) {}

  /** Where the club is asked about it. */
  public String getAsk() {
    return AskPages.about(text);
  }

  static String address(SearchQuery query) {
    String parameters = SearchQueryCodec.write(query);
    return parameters.isEmpty() ? "/" : "/?" + parameters;
  }
}
