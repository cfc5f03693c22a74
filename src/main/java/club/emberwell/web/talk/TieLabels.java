package club.emberwell.web.talk;

import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import club.emberwell.talk.TieCautions;
import club.emberwell.talk.Ties;
import club.emberwell.web.caution.MarkView;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What an entry is about, in words, and the searches that lead there. */
@ApplicationScoped
class TieLabels {
  /** Words of a material's name that are taken together. */
  private static final int LONGEST_NAME = 3;

  private final CatalogService catalog;

  TieLabels(CatalogService catalog) {
    this.catalog = catalog;
  }

  /**
   * One tie.
   *
   * @param href where it leads, or null
   */
  public record Tie(String label, String href) {}

  /** What a tie's code is called; null for none. */
  String label(Facet facet, String code) {
    return code == null ? null : FacetValues.label(facet, code, catalog.vocabulary());
  }

  /** The slug a running text names first, its longest names before shorter ones. */
  Optional<String> slugIn(TermKind kind, String text) {
    List<String> words = List.of(text.split("\\s+"));
    for (int length = Math.min(LONGEST_NAME, words.size()); length > 0; length--) {
      for (int from = 0; from + length <= words.size(); from++) {
        String name = String.join(" ", words.subList(from, from + length));
        Set<String> meant = catalog.vocabulary().holders(kind, name);
        if (meant.size() == 1) {
          return meant.stream().findFirst();
        }
      }
    }
    return Optional.empty();
  }

  /** The heaviest caution of what it is about; null where there is none. */
  MarkView mark(Ties ties) {
    return TieCautions.of(ties, catalog.cautions()).map(MarkView::of).orElse(null);
  }

  List<Tie> of(Ties ties) {
    List<Tie> all = new ArrayList<>();
    facet(all, Facet.MATERIAL, ties.material());
    facet(all, Facet.COATING, ties.coating());
    facet(all, Facet.SOURCE, ties.source());
    facet(all, Facet.PROCESS, ties.process());
    facet(all, Facet.MACHINE_MODEL, ties.machineModel());
    if (ties.controllerVersion() != null) {
      all.add(new Tie("firmware " + ties.controllerVersion(), null));
    }
    if (ties.report() != null) {
      all.add(new Tie("about a report", "/reports/" + ties.report()));
    }
    return all;
  }

  private void facet(List<Tie> all, Facet facet, String value) {
    if (value != null) {
      SearchQuery query = SearchQuery.everything().withFacet(facet.code(), List.of(value));
      all.add(new Tie(label(facet, value), "/?" + SearchQueryCodec.write(query)));
    }
  }

  /** The search for what peers did with the same work; everything where nothing is named. */
  SearchQuery search(Ties ties) {
    SearchQuery query = SearchQuery.everything();
    query = with(query, Facet.MATERIAL, ties.material());
    query = with(query, Facet.COATING, ties.coating());
    query = with(query, Facet.SOURCE, ties.source());
    return with(query, Facet.PROCESS, ties.process());
  }

  private static SearchQuery with(SearchQuery query, Facet facet, String value) {
    return value == null ? query : query.withFacet(facet.code(), List.of(value));
  }
}
