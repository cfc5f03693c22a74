package club.emberwell.web.photo;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Actor;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.photo.ShownPhotos;
import club.emberwell.search.SearchResult;
import club.emberwell.search.SearchService;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.QueryString;
import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.web.find.FacetChoice;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.range.RangeView;
import club.emberwell.web.trial.TrialText;
import club.emberwell.web.trial.WorkText;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/**
 * The photos of all reports on a material, those of the newest first, from the index and one
 * statement.
 */
@ApplicationScoped
public class Gallery {
  /** Reports of a page; each has a few photos at most. */
  private static final int REPORTS = 24;

  private final SearchService search;
  private final ShownPhotos photos;
  private final CatalogService catalog;

  Gallery(SearchService search, ShownPhotos photos, CatalogService catalog) {
    this.search = search;
    this.photos = photos;
    this.catalog = catalog;
  }

  /**
   * Which are wanted.
   *
   * @param process its code, or null
   * @param source of laser, its code, or null
   * @param page 0 = the first
   */
  public record Wanted(String process, String source, int page) {}

  /**
   * A page of them.
   *
   * @param search where the reports themselves are found
   */
  public record View(
      String material,
      String path,
      String counted,
      List<FacetChoice> choices,
      List<Shown> photos,
      Pager pager,
      String search) {}

  /** A photo with the report it is of. */
  public record Shown(Photo photo, String href, String work, String result) {}

  /** Those of a material and everything below it. */
  public View of(Term material, Wanted wanted, Actor actor) {
    SearchQuery query =
        with(
            with(
                SearchQuery.everything()
                    .withFacet(Facet.MATERIAL.code(), List.of(material.slug()))
                    .withFacet(Facet.PHOTO.code(), List.of("with"))
                    .withSort(Order.NEWEST.code())
                    .withSize(REPORTS)
                    .withPage(Math.min(wanted.page(), SearchLimits.PAGE)),
                Facet.PROCESS,
                wanted.process()),
            Facet.SOURCE,
            wanted.source());
    SearchResult found = search.search(query, actor);
    String path = "/materials/" + material.slug();
    return new View(
        material.label(),
        path,
        RangeView.counted(found.totalReports(), "report", "reports"),
        found.facets().stream()
            .filter(list -> list.facet() == Facet.PROCESS || list.facet() == Facet.SOURCE)
            .map(list -> FacetChoice.of(list.facet(), list.values().stream()))
            .toList(),
        shown(found, actor),
        Pager.of(
            found.query().page(),
            found.pages(),
            number -> address(path + "/photos", wanted, number)),
        "/?" + Facet.MATERIAL.code() + "=" + material.slug() + "&" + Facet.PHOTO.code() + "=with");
  }

  private static SearchQuery with(SearchQuery query, Facet facet, String value) {
    return value == null || value.isBlank()
        ? query
        : query.withFacet(facet.code(), List.of(value.strip()));
  }

  private List<Shown> shown(SearchResult found, Actor actor) {
    List<ReportSnapshot> reports = found.hits().stream().map(SearchResult.Hit::report).toList();
    Map<UUID, List<Photo>> all = photos.of(reports.stream().map(ReportSnapshot::id).toList());
    Vocabulary vocabulary = catalog.vocabulary();
    return reports.stream()
        .flatMap(
            report ->
                all.getOrDefault(report.id(), List.of()).stream()
                    .map(
                        photo ->
                            new Shown(
                                photo,
                                "/reports/" + report.id(),
                                WorkText.of(report, vocabulary, actor.units()),
                                report.process().label()
                                    + ", "
                                    + TrialText.laser(report.laser(), actor.units()))))
        .toList();
  }

  private static String address(String path, Wanted wanted, int page) {
    List<String> pairs = new ArrayList<>();
    pairs.add(pair(Facet.PROCESS, wanted.process()));
    pairs.add(pair(Facet.SOURCE, wanted.source()));
    pairs.add(page == 0 ? null : "page=" + page);
    pairs.removeIf(Objects::isNull);
    return pairs.isEmpty() ? path : path + "?" + String.join("&", pairs);
  }

  private static String pair(Facet facet, String value) {
    return value == null || value.isBlank()
        ? null
        : facet.code() + "=" + QueryString.encoded(value.strip());
  }
}
