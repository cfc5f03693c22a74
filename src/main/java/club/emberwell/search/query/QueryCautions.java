package club.emberwell.search.query;

import club.emberwell.catalog.Catalog;
import club.emberwell.catalog.Caution;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Process;
import club.emberwell.remark.Coded;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The cautions of what a search asks for, typed or ticked. */
public final class QueryCautions {
  private QueryCautions() {}

  /**
   * Each once, bans first; the narrowed process and laser source leave out what is not about them.
   * An empty list says nothing about what is safe.
   */
  public static List<Caution> of(SearchQuery query, Catalog now) {
    Set<Term> terms = new LinkedHashSet<>(now.cautions().named(query.text()));
    for (TermKind kind : List.of(TermKind.MATERIAL, TermKind.COATING)) {
      for (String slug : query.facets().getOrDefault(kind.code(), List.of())) {
        now.vocabulary().successor(kind, slug).ifPresent(terms::add);
      }
    }
    return now.cautions()
        .forTerms(
            terms,
            chosen(query, Facet.PROCESS, Process.class),
            chosen(query, Facet.SOURCE, LaserSource.class));
  }

  private static <E extends Enum<E> & Coded> List<E> chosen(
      SearchQuery query, Facet facet, Class<E> of) {
    return query.facets().getOrDefault(facet.code(), List.of()).stream()
        .flatMap(code -> Coded.of(of, code).stream())
        .toList();
  }
}
