package club.emberwell.web.find;

import club.emberwell.bench.Machine;
import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.consensus.ConsensusService;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.member.Actor;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.Coded;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.search.SearchResult;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.QueryCautions;
import club.emberwell.search.query.QueryLabel;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.RangeField;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.search.query.SearchQueryCodec.Parsed;
import club.emberwell.web.answer.AnswerViews;
import club.emberwell.web.caution.CautionsView;
import club.emberwell.web.find.FindView.Answer;
import club.emberwell.web.find.FindView.Asked;
import club.emberwell.web.find.FindView.Chip;
import club.emberwell.web.find.FindView.Found;
import club.emberwell.web.find.FindView.Help;
import club.emberwell.web.find.FindView.Narrowed;
import club.emberwell.web.find.FindView.Ordering;
import club.emberwell.web.find.FindView.Problem;
import club.emberwell.web.find.FindView.Way;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.range.RangeView;
import club.emberwell.web.range.WorksView;
import club.emberwell.web.talk.TalkBeside;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/** Composes the search page from the search, the ranges and the cautions. */
@ApplicationScoped
class FindViews {
  /** Works listed before "more". */
  private static final int WORKS_IN_SIGHT = 6;

  private final SearchService search;
  private final ConsensusService consensus;
  private final CatalogService catalog;
  private final TalkBeside talk;
  private final AnswerViews answers;

  FindViews(
      SearchService search,
      ConsensusService consensus,
      CatalogService catalog,
      TalkBeside talk,
      AnswerViews answers) {
    this.search = search;
    this.consensus = consensus;
    this.catalog = catalog;
    this.talk = talk;
    this.answers = answers;
  }

  /**
   * @param machine to answer for, or null: a machine the hits are ordered by, else the last used
   */
  FindView of(Parsed parsed, UUID machine, Actor actor) {
    SearchQuery query = parsed.query();
    Catalog now = catalog.snapshot();
    Optional<ConsensusService.Answer> met =
        isNarrow(query) || search.trials() <= ConsensusLimits.LISTED
            ? Optional.of(
                consensus.answer(new ConsensusService.Ask(query, actor, machine, null, false)))
            : Optional.empty();
    Optional<UUID> mine =
        Optional.ofNullable(query.near())
            .or(
                () ->
                    met.map(ConsensusService.Answer::mine)
                        .orElseGet(() -> consensus.machines(actor))
                        .chosen()
                        .map(Machine::id));
    SearchResult result = search.search(ordered(query, mine), actor);
    UnitPreferences reader = actor.units();
    return new FindView(
        new Asked(
            query.isEverything() ? "" : QueryLabel.of(query, now.vocabulary()),
            query.text(),
            QueryString.pairs(
                SearchQueryCodec.write(query.withText("").withSort("").withNear(null))),
            new Ordering(
                orders(query, mine, result.order()),
                QueryString.pairs(
                    SearchQueryCodec.write(query.withSort("").withNear(mine.orElse(null))))),
            SearchQueryCodec.write(query.withPage(0).withSort("").withNear(null))),
        new Narrowed(
            chips(query),
            query.isEverything() ? null : "/",
            FacetGroup.of(
                result.facets().stream()
                    .filter(list -> isOffered(list.facet(), query))
                    .map(list -> FacetView.of(list, query))
                    .filter(facet -> !facet.isEmpty())
                    .toList())),
        CautionsView.of(QueryCautions.of(query, now), now.vocabulary(), reader),
        met.map(answer -> answer(answer, query, actor, now)).orElse(Answer.TOO_WIDE),
        new Found(
            found(result),
            result.hits().stream().map(h -> HitView.of(h, now, reader)).toList(),
            HitHeads.of(result.order(), order -> FindView.address(query.withSort(order.code()))),
            query.page() > 0 ? FindView.address(query.withPage(query.page() - 1)) : null,
            "Page " + (query.page() + 1) + " of " + Math.max(1, result.pages()),
            query.page() + 1 < result.pages()
                ? FindView.address(query.withPage(query.page() + 1))
                : null),
        talk.search(query),
        new Help(
            parsed.problems().stream().map(problem -> problem(problem, query)).toList(),
            result.guesses().entrySet().stream()
                .map(e -> "“" + e.getKey() + "” was read as " + String.join(", ", e.getValue()))
                .toList(),
            result.suggestions().stream().map(FindViews::way).toList()));
  }

  private static Problem problem(Remark problem, SearchQuery query) {
    Optional<Facet> facet =
        Coded.of(Facet.class, problem.field().substring(1))
            .filter(found -> problem.is(RemarkId.UNIT_MISSING));
    return new Problem(
        problem.detail(),
        facet
            .map(f -> problem.readings().stream().map(text -> meaning(query, f, text)).toList())
            .orElse(List.of()));
  }

  /** The search with a reading for what was not understood. */
  private static Way meaning(SearchQuery query, Facet facet, String reading) {
    List<String> values = new ArrayList<>(query.facets().get(facet.code()));
    values.removeIf(value -> !FacetValues.fixed(facet).containsKey(value));
    values.add(reading);
    return new Way(reading, FindView.address(query.withFacet(facet.code(), values)));
  }

  /** What machines are called tells something only of one member's. */
  private static boolean isOffered(Facet facet, SearchQuery query) {
    return facet != Facet.MACHINE_NAME || query.filters(facet) || query.filters(Facet.MEMBER);
  }

  private static Way way(SearchResult.Suggestion way) {
    String label =
        switch (way.kind()) {
          case "drop-all" -> "Everything";
          case "widen" -> "All of " + way.label();
          default -> "Without “" + way.label() + "”";
        };
    return new Way(
        label + ": " + RangeView.counted(way.reports(), "report", "reports"),
        FindView.address(way.query()));
  }

  private static boolean isNarrow(SearchQuery query) {
    return !query.text().isEmpty()
        || query.facets().containsKey(Facet.MATERIAL.code())
        || query.facets().containsKey(Facet.COATING.code());
  }

  private Answer answer(
      ConsensusService.Answer found, SearchQuery query, Actor actor, Catalog now) {
    WorksView.Reader reader =
        new WorksView.Reader(query, now.vocabulary(), actor.units(), FindView.ADDRESS);
    return new Answer(
        answers.onFind(found, query, actor),
        WorksView.of(AnswerViews.otherWorks(found), reader, WORKS_IN_SIGHT),
        "",
        "/range?" + SearchQueryCodec.write(query.withPage(0)));
  }

  private static String found(SearchResult result) {
    return RangeView.counted(result.totalReports(), "report", "reports")
        + " with "
        + RangeView.counted(result.totalTrials(), "trial", "trials");
  }

  private List<Chip> chips(SearchQuery query) {
    List<Chip> chips = new ArrayList<>();
    query
        .facets()
        .forEach(
            (code, values) ->
                Coded.of(Facet.class, code)
                    .ifPresent(facet -> values.forEach(v -> chips.add(chip(query, facet, v)))));
    query
        .ranges()
        .forEach(
            (stem, limits) ->
                RangeField.of(stem).ifPresent(f -> chips.add(chip(query, f, limits))));
    return chips;
  }

  private Chip chip(SearchQuery query, Facet facet, String value) {
    return new Chip(
        facet.label() + ": " + FacetValues.label(facet, value, catalog.vocabulary()),
        FindView.address(query.toggled(facet.code(), value)));
  }

  private static Chip chip(SearchQuery query, RangeField field, SearchQuery.Limits limits) {
    String from = SearchQueryCodec.written(field, limits.min());
    String to = SearchQueryCodec.written(field, limits.max());
    String text =
        from.isEmpty() ? "up to " + to : to.isEmpty() ? "from " + from : from + " to " + to;
    return new Chip(
        field.label() + " " + text, FindView.address(query.withRange(field.stem(), null)));
  }

  /** The reader's machine comes first, unless words or the reader ask for another order. */
  private static SearchQuery ordered(SearchQuery query, Optional<UUID> mine) {
    SearchQuery near = query.withNear(mine.orElse(null));
    boolean byWords = query.near() == null && query.sort().isEmpty() && !query.text().isEmpty();
    return (byWords ? near.withSort(Order.RELEVANCE.code()) : near).withPage(query.page());
  }

  private static List<Option> orders(SearchQuery query, Optional<UUID> mine, Order effective) {
    return Stream.of(Order.values())
        .filter(o -> o != Order.NEAR || mine.isPresent())
        .filter(o -> o != Order.RELEVANCE || !query.text().isEmpty())
        .map(o -> new Option(o.code(), o.label(), o == effective))
        .toList();
  }
}
