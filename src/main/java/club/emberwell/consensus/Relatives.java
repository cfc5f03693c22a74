package club.emberwell.consensus;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.consensus.range.WorkKey;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.FacetValues;
import club.emberwell.search.query.SearchQuery;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where the relatives of a work are found: works that differ from it in one part.
 *
 * @param query what finds them
 * @param by the part they differ in
 * @param words whose voices these are
 */
record Relatives(SearchQuery query, Facet by, String words) {
  /** What relatives may differ in, the nearest first; of materials only those of one kind. */
  private static final List<Facet> NEAREST =
      List.of(Facet.COLOUR, Facet.RESULT_COLOUR, Facet.THICKNESS, Facet.COATING, Facet.MATERIAL);

  /** The relatives of a work that was done, the nearest first. */
  static List<Relatives> of(RangeKey key, Vocabulary vocabulary) {
    return of(WorkQuery.of(key, vocabulary), vocabulary);
  }

  /** The relatives of what a search asks for, where nobody did that. */
  static List<Relatives> of(SearchQuery query, Vocabulary vocabulary) {
    List<Relatives> all = new ArrayList<>();
    for (Facet facet : NEAREST) {
      List<String> asked = query.facets().getOrDefault(facet.code(), List.of());
      if (asked.size() == 1 && stated(asked.get(0))) {
        if (facet == Facet.MATERIAL) {
          String slug = FacetValues.itselfOf(asked.get(0)).orElse(asked.get(0));
          sameKind(query, slug, vocabulary).ifPresent(all::add);
        } else {
          all.add(new Relatives(query.withFacet(facet.code(), List.of()), facet, words(facet)));
        }
      }
    }
    return all;
  }

  private static boolean stated(String value) {
    return !value.equals(Facet.NOT_GIVEN) && !value.equals(Facet.NOT_FILED);
  }

  private static String words(Facet facet) {
    return switch (facet) {
      case COATING -> "the same material with other coatings";
      case THICKNESS -> "the same material in other thicknesses";
      case RESULT_COLOUR -> "marks of other colours on the same material";
      default -> "the same work in other colours";
    };
  }

  private static Optional<Relatives> sameKind(
      SearchQuery query, String material, Vocabulary vocabulary) {
    List<Term> path = vocabulary.path(TermKind.MATERIAL, material);
    if (path.size() < 2) {
      return Optional.empty();
    }
    Term parent = path.get(path.size() - 2);
    return Optional.of(
        new Relatives(
            query.withFacet(Facet.MATERIAL.code(), List.of(parent.slug())),
            Facet.MATERIAL,
            "other materials of the kind " + parent.label()));
  }

  /** Those of the groups found that differ from the key in this part and in nothing else. */
  List<Group> beside(RangeKey key, List<Group> found) {
    return found.stream()
        .filter(group -> alike(group.key(), key) && !group.key().equals(key))
        .filter(group -> group.key().work().part(by).filter(p -> stated(p.value())).isPresent())
        .toList();
  }

  private boolean alike(RangeKey one, RangeKey other) {
    return one.process() == other.process()
        && one.sameLight(other)
        && one.work().without(by).equals(other.work().without(by));
  }

  /** The works somebody may have asked for, each among groups that differ from it in this part. */
  List<RangeKey> wanted(SearchQuery asked, List<Group> found, Vocabulary vocabulary) {
    String value = asked.facets().get(by.code()).get(0);
    String label = FacetValues.label(by, value, vocabulary);
    return found.stream()
        .map(Group::key)
        .filter(key -> key.work().part(by).isPresent())
        .map(
            key ->
                new RangeKey(
                    key.process(),
                    key.light(),
                    key.regime(),
                    key.work().with(by, new WorkKey.Part(value, label))))
        .distinct()
        .toList();
  }
}
