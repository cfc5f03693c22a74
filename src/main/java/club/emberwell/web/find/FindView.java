package club.emberwell.web.find;

import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.web.answer.AnswerView;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.range.WorksView;
import club.emberwell.web.talk.AskPages;
import club.emberwell.web.talk.EntryLine;
import java.util.ArrayList;
import java.util.List;

/**
 * The search page in one state.
 *
 * @param cautions of what is asked for, typed or ticked
 * @param talk questions and notices about the same
 */
record FindView(
    Asked asked,
    Narrowed narrowed,
    CautionsView cautions,
    Answer answer,
    Found found,
    List<EntryLine> talk,
    Help help) {

  /**
   * What is looked for, and how the form goes on from it.
   *
   * @param title the search in words, or empty
   * @param text what stands in the box
   * @param hidden what a form must carry along so that typing keeps the facets
   * @param watch the search as a watch keeps it
   */
  record Asked(
      String title, String text, List<QueryString.Pair> hidden, Ordering ordering, String watch) {
    /** Where the club is asked about it. */
    public String getAsk() {
      return AskPages.about(text);
    }
  }

  /**
   * In what order hits stand.
   *
   * @param hidden what its form carries along
   */
  record Ordering(List<Option> orders, List<QueryString.Pair> hidden) {}

  /**
   * By what it is narrowed down and could be.
   *
   * @param chips what is applied beside the words, each with the address without it
   * @param clear address without all of it, or null
   */
  record Narrowed(List<Chip> chips, String clear, List<FacetGroup> groups) {}

  /**
   * What members used.
   *
   * @param panels for the one work that was met; more only where nothing was and works may be meant
   * @param works other lasers beside it, or all works that were met
   * @param none why nothing is said, or empty
   * @param page address of all about it, or null
   */
  record Answer(List<AnswerView> panels, WorksView works, String none, String page) {
    static final Answer TOO_WIDE =
        new Answer(
            List.of(),
            new WorksView(List.of(), null, 0),
            "Choose a material or a coating, or type one, to see what members used.",
            null);
  }

  /**
   * A page of the reports.
   *
   * @param previous address or null, the same for next
   */
  record Found(
      String said,
      List<HitView> hits,
      HitHeads heads,
      String previous,
      String pageOf,
      String next) {}

  /**
   * What was not understood as it was typed, and ways out of an empty result.
   *
   * @param guesses how words were read
   */
  record Help(List<Problem> problems, List<String> guesses, List<Way> suggestions) {}

  /**
   * What was not understood.
   *
   * @param ways what may have been meant
   */
  record Problem(String said, List<Way> ways) {}

  /** An applied limit. */
  record Chip(String label, String href) {}

  /** A way out of an empty result. */
  record Way(String label, String href) {}

  /** What it comes to, for those who see no more of it. */
  String getDescription() {
    String what =
        asked.title().isEmpty()
            ? "Laser settings that members tested, with power, speed, dose and how it came out: "
            : "Laser settings that members tested for " + asked.title() + ": ";
    List<String> said = new ArrayList<>();
    cautions.bans().forEach(ban -> said.add(ban.title() + ": " + ban.advice()));
    said.add(what + found.said() + ".");
    if (answer.panels().size() == 1) {
      said.add(answer.panels().get(0).getDescription());
    }
    return String.join(" ", said);
  }

  /** Before the parameters of a search. */
  static final String ADDRESS = "/?";

  static String address(SearchQuery query) {
    String parameters = SearchQueryCodec.write(query);
    return parameters.isEmpty() ? "/" : ADDRESS + parameters;
  }
}
