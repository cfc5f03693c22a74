package club.emberwell.search.match;

import club.emberwell.catalog.Vocabulary;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.SearchQuery;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What was typed, as far as the vocabulary knows it, as choices in facets: "navy powder coat" is a
 * colour and a coating. The longest phrases first; words that mean two things of one kind, or a
 * facet that is chosen already, stay words.
 */
public final class TextReading {
  private static final List<Facet> FACETS =
      List.of(Facet.values()).stream().filter(facet -> facet.vocabulary().isPresent()).toList();

  private TextReading() {}

  private record Meant(Facet facet, String slug) {}

  /** The same search with its words in facets where they belong there. */
  public static SearchQuery inFacets(SearchQuery query, Vocabulary vocabulary) {
    List<String> words = new Words(vocabulary.folding()).wanted(query.text());
    List<String> rest = new ArrayList<>();
    SearchQuery read = query;
    int at = 0;
    while (at < words.size()) {
      int next = at + 1;
      Optional<Meant> meant = Optional.empty();
      for (int to = Math.min(words.size(), at + Words.PHRASE); to > at && meant.isEmpty(); to--) {
        meant = meaning(String.join(" ", words.subList(at, to)), read, vocabulary);
        next = meant.isPresent() ? to : next;
      }
      if (meant.isPresent()) {
        read = read.withFacet(meant.get().facet().code(), List.of(meant.get().slug()));
      } else {
        rest.add(words.get(at));
      }
      at = next;
    }
    return coated(read, rest, vocabulary);
  }

  /** A thing whose coating is known and whose material is not: a powder-coated mug is of steel. */
  private static SearchQuery coated(SearchQuery read, List<String> rest, Vocabulary vocabulary) {
    Optional<String> thing =
        read.facets().containsKey(Facet.MATERIAL.code())
                || !read.facets().containsKey(Facet.COATING.code())
            ? Optional.empty()
            : rest.stream()
                .filter(word -> vocabulary.folding().thing(word).isPresent())
                .findFirst();
    if (thing.isEmpty()) {
      return read.withText(String.join(" ", rest));
    }
    String steel = vocabulary.folding().thing(thing.get()).orElseThrow().coated();
    return read.withFacet(Facet.MATERIAL.code(), List.of(steel))
        .withText(
            rest.stream()
                .filter(word -> !word.equals(thing.get()))
                .collect(Collectors.joining(" ")));
  }

  private static Optional<Meant> meaning(String phrase, SearchQuery query, Vocabulary vocabulary) {
    for (Facet facet : FACETS) {
      Set<String> slugs = vocabulary.holders(facet.vocabulary().orElseThrow(), phrase);
      if (slugs.size() == 1 && !query.facets().containsKey(facet.code())) {
        return Optional.of(new Meant(facet, slugs.iterator().next()));
      }
    }
    return Optional.empty();
  }
}
