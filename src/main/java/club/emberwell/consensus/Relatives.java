package club.emberwell.consensus;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Property;
import club.emberwell.search.query.SearchQuery;
import java.util.ArrayList;
import java.util.List;

/**
 * A wider query to borrow from.
 *
 * @param query the same search with one choice widened
 * @param by what its works differ in
 * @param words whose voices these are
 */
record Relatives(SearchQuery query, Property by, String words) {

  /** The wider queries of a query, the nearest relatives first. */
  static List<Relatives> of(SearchQuery query, Vocabulary vocabulary) {
    List<Relatives> all = new ArrayList<>();
    if (query.facets().containsKey(Facet.COLOUR.code())) {
      all.add(without(query, Facet.COLOUR, Property.COLOUR, "the same work in other colours"));
    }
    if (query.facets().containsKey(Facet.COATING.code())) {
      all.add(
          without(query, Facet.COATING, Property.COATING, "the same material with other coatings"));
    }
    List<String> materials = query.facets().getOrDefault(Facet.MATERIAL.code(), List.of());
    if (materials.size() == 1) {
      List<Term> path = vocabulary.path(TermKind.MATERIAL, materials.get(0));
      if (path.size() > 1) {
        Term parent = path.get(path.size() - 2);
        all.add(
            new Relatives(
                query.withFacet(Facet.MATERIAL.code(), List.of(parent.slug())),
                Property.MATERIAL,
                "other materials of the kind " + parent.label()));
      }
    }
    return all;
  }

  private static Relatives without(SearchQuery query, Facet facet, Property by, String words) {
    return new Relatives(query.withFacet(facet.code(), List.of()), by, words);
  }
}
