package club.emberwell.catalog;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * The materials and coatings a text names, wherever in it they stand. The longest spelling counts:
 * "carbon steel" names a steel, not carbon. A denial beside the word ("PVC-free", "no vinyl") is
 * believed.
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
    return new ArrayList<>(named.found);
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
