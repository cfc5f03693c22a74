package club.emberwell.web.bench;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.remark.Remark;
import club.emberwell.report.OwnReports;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.SearchResult;
import club.emberwell.search.SearchResult.FacetValue;
import club.emberwell.search.SearchService;
import club.emberwell.search.index.IndexNotReady;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.web.find.FacetChoice;
import club.emberwell.web.find.HitHeads;
import club.emberwell.web.find.HitView;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.range.RangeView;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What somebody posted: the whole list in every state, or what a search of it finds among those
 * that everybody sees. The search is that of the find page and of {@code GET /reports?member=}.
 */
@ApplicationScoped
class OwnResults {
  /** By what one narrows one's own results here; the address takes every other filter too. */
  private static final List<Facet> FILTERS =
      List.of(Facet.MATERIAL, Facet.PROCESS, Facet.EFFECT, Facet.MACHINE_NAME);

  private static final String PLACE = "#reports";

  private final OwnReports reports;
  private final SearchService search;
  private final CatalogService catalog;

  OwnResults(OwnReports reports, SearchService search, CatalogService catalog) {
    this.reports = reports;
    this.search = search;
    this.catalog = catalog;
  }

  /**
   * A page of them.
   *
   * @param filter null while nothing can be searched
   */
  record Results(List<HitView> hits, Pager pager, Filter filter) {}

  /**
   * By what they are narrowed.
   *
   * @param found how many, in words; null for the whole list
   * @param problems what was not understood of the address
   */
  record Filter(
      String text,
      List<FacetChoice> choices,
      String found,
      HitHeads heads,
      List<String> problems) {}

  /**
   * @param from page of the whole list
   * @param others parameters of the address that are not of the search
   */
  Results of(Map<String, List<String>> address, String from, Set<String> others, Actor actor) {
    Catalog now = catalog.snapshot();
    SearchQueryCodec.Parsed parsed =
        SearchQueryCodec.read(address, now.vocabulary(), others, actor.units().style());
    SearchQuery asked = parsed.query().withNear(null).withPage(parsed.query().page());
    boolean narrowed = !asked.isEverything() || !asked.sort().isEmpty() || asked.page() > 0;
    try {
      SearchResult found =
          search.search(theirs(narrowed ? asked : asked.withSize(1), actor), actor);
      Filter filter = filter(parsed, asked, found, narrowed);
      return narrowed
          ? new Results(
              found.hits().stream().map(hit -> HitView.own(hit, now, actor.units())).toList(),
              pager(asked, found),
              filter)
          : all(from, filter, actor);
    } catch (IndexNotReady e) {
      return all(from, null, actor);
    }
  }

  private static SearchQuery theirs(SearchQuery asked, Actor actor) {
    return asked.withFacet(Facet.MEMBER.code(), List.of(actor.handle())).withPage(asked.page());
  }

  private Results all(String from, Filter filter, Actor actor) {
    Slice<ReportSnapshot> own = reports.of(actor, Pager.part(from));
    return new Results(
        own.rows().stream()
            .map(report -> HitView.own(report, catalog.snapshot(), actor.units()))
            .toList(),
        Pager.of(
            own, page -> (page == 0 ? BenchPages.PATH : BenchPages.PATH + "?from=" + page) + PLACE),
        filter);
  }

  private static Filter filter(
      SearchQueryCodec.Parsed parsed, SearchQuery asked, SearchResult found, boolean narrowed) {
    return new Filter(
        asked.text(),
        found.facets().stream()
            .filter(list -> FILTERS.contains(list.facet()))
            .map(
                list ->
                    FacetChoice.of(
                        list.facet(), list.values().stream().filter(FacetValue::offered)))
            .toList(),
        narrowed ? RangeView.counted(found.totalReports(), "result", "results") : null,
        HitHeads.of(
            narrowed ? found.order() : Order.NEWEST,
            order -> address(asked.withSort(order.code()))),
        parsed.problems().stream().map(Remark::detail).toList());
  }

  private static Pager pager(SearchQuery asked, SearchResult found) {
    return Pager.of(asked.page(), found.pages(), page -> address(asked.withPage(page)));
  }

  private static String address(SearchQuery query) {
    String parameters = SearchQueryCodec.write(query);
    return BenchPages.PATH + (parameters.isEmpty() ? "" : "?" + parameters) + PLACE;
  }
}
