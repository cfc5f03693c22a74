package club.emberwell.api.view;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.report.reading.Filed;
import org.jspecify.annotations.Nullable;

/**
 * A word of the author's and what it is filed as.
 *
 * @param value left out while it waits for filing
 * @param label of the term, or the author's words while they wait
 */
public record WordJson(@Nullable String value, String label, String written) {
  /** Null where nothing was written. */
  static WordJson of(Vocabulary vocabulary, TermKind kind, Filed word) {
    if (word.written() == null) {
      return null;
    }
    String label = vocabulary.successor(kind, word.slug()).map(Term::label).orElse(word.written());
    return new WordJson(word.slug(), label, word.written());
  }
}
