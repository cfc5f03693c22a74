package club.emberwell.catalog;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The materials and coatings a text names, wherever in it they stand. The longest spelling counts:
 * "carbon steel" names a steel, not carbon, and a "steel mug" no porcelain. A denial beside the
 * word ("PVC-free", "no vinyl") is believed.
 */
final class NamedTerms {
  private static final Set<String> DENIALS = Set.of("no", "non", "not", "without", "ohne", "sans");
  private static final String FREE = "free";
  private static final List<TermKind> KINDS = List.of(TermKind.MATERIAL, TermKind.COATING);

  private final Vocabulary vocabulary;
  private final List<String> words;
  private final boolean[] taken;
  private final Set<Term> found = new LinkedHashSet<>();

  private NamedTerms(Vocabulary vocabulary, String text) {
    this.vocabulary = vocabulary;
    String cut = text.substring(0, Math.min(text.length(), CatalogLimits.TEXT));
    this.words = vocabulary.folding().words(Folding.withoutThickness(cut));
    this.taken = new boolean[words.size()];
  }

  /** Each once; a spelling of several things names them all. */
  static List<Term> in(String text, Vocabulary vocabulary) {
    NamedTerms named = new NamedTerms(vocabulary, text);
    for (int length = Math.min(named.words.size(), CatalogLimits.SCREENED_WORDS);
        length > 0;
        length--) {
      for (int from = 0; from + length <= named.words.size(); from++) {
        named.look(from, from + length);
      }
    }
    named.things();
    return new ArrayList<>(named.found);
  }

  /**
   * A thing beside a named material is made of that, beside a coating of what is coated; alone it
   * may be any but the coated one, which nobody thinks of then.
   */
  private void things() {
    Set<TermKind> kinds = found.stream().map(Term::kind).collect(Collectors.toSet());
    if (kinds.contains(TermKind.MATERIAL)) {
      return;
    }
    boolean coated = kinds.contains(TermKind.COATING);
    for (int at = 0; at < words.size(); at++) {
      Optional<Thing> thing =
          taken[at] || denied(at, at + 1)
              ? Optional.empty()
              : vocabulary.folding().thing(words.get(at));
      thing.stream()
          .flatMap(t -> coated ? Stream.of(t.coated()) : alone(t))
          .flatMap(slug -> vocabulary.successor(TermKind.MATERIAL, slug).stream())
          .forEach(found::add);
    }
  }

  private static Stream<String> alone(Thing thing) {
    return thing.of().stream().filter(slug -> !slug.equals(thing.coated()));
  }

  private void look(int from, int to) {
    if (!isFree(from, to) || denied(from, to)) {
      return;
    }
    String spelling = String.join("", words.subList(from, to));
    boolean hit = false;
    for (TermKind kind : KINDS) {
      List<Term> terms = vocabulary.spelled(kind, spelling);
      hit |= !terms.isEmpty();
      found.addAll(terms);
    }
    for (int i = from; hit && i < to; i++) {
      taken[i] = true;
    }
  }

  private boolean isFree(int from, int to) {
    for (int i = from; i < to; i++) {
      if (taken[i]) {
        return false;
      }
    }
    return true;
  }

  private boolean denied(int from, int to) {
    return to < words.size() && words.get(to).equals(FREE)
        || from > 0 && DENIALS.contains(words.get(from - 1));
  }
}
