package club.emberwell.web.material;

import club.emberwell.catalog.TermKind;
import club.emberwell.member.Actor;
import club.emberwell.search.SearchResult;
import club.emberwell.search.SearchService;
import club.emberwell.search.index.IndexNotReady;
import club.emberwell.search.query.SearchQuery;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** How many reports there are on what, all of it from one search. */
@ApplicationScoped
class ReportCounts {
  private static final List<TermKind> COUNTED =
      List.of(TermKind.MATERIAL, TermKind.COATING, TermKind.COLOUR);

  private final SearchService search;

  ReportCounts(SearchService search) {
    this.search = search;
  }

  /**
   * Reports by kind and slug, with everything below a term; zero where none or where the index is
   * not there yet.
   */
  record Counts(Map<TermKind, Map<String, Integer>> byTerm) {
    static final Counts NONE = new Counts(Map.of());

    int of(TermKind kind, String slug) {
      return byTerm.getOrDefault(kind, Map.of()).getOrDefault(slug, 0);
    }
  }

  Counts all(Actor actor) {
    Map<TermKind, Map<String, Integer>> found = new EnumMap<>(TermKind.class);
    try {
      SearchResult result = search.search(SearchQuery.everything().withSize(1), actor);
      for (TermKind kind : COUNTED) {
        Map<String, Integer> counts = new HashMap<>();
        result.facets().stream()
            .filter(list -> list.facet().code().equals(kind.code()))
            .flatMap(list -> list.values().stream())
            .forEach(value -> counts.put(value.value(), value.count()));
        found.put(kind, counts);
      }
    } catch (IndexNotReady e) {
      return Counts.NONE;
    }
    return new Counts(found);
  }
}
