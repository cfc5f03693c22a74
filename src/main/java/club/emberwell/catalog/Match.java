package club.emberwell.catalog;

import java.util.List;
import java.util.Optional;

/**
 * What a written text means in one vocabulary.
 *
 * @param written exactly what was typed
 * @param term present only where the outcome is EXACT; never a merged term, always its successor
 * @param candidates AMBIGUOUS: every term it could mean; NONE: the nearest, best first, at most
 *     {@link CatalogLimits#SUGGESTIONS}
 * @param partly true where a thickness or words like "sheet" had to be left out to match
 */
public record Match(
    String written, Outcome outcome, Optional<Term> term, List<Term> candidates, boolean partly) {
  /** Ambiguous is no match: nothing is guessed. */
  public enum Outcome {
    EXACT,
    AMBIGUOUS,
    NONE
  }

  public Match {
    candidates = List.copyOf(candidates);
  }

  static Match exact(String written, Term term) {
    return new Match(written, Outcome.EXACT, Optional.of(term), List.of(), false);
  }

  static Match open(String written, Outcome outcome, List<Term> candidates) {
    return new Match(written, outcome, Optional.empty(), candidates, false);
  }

  Match inPart() {
    return new Match(written, outcome, term, candidates, true);
  }
}
