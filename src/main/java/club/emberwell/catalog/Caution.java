package club.emberwell.catalog;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * A caution that goes with some work.
 *
 * @param because the material or coating in hand through which it goes; empty for a general one and
 *     for what the vocabulary does not hold
 * @param unlisted the words for what the vocabulary does not hold, through which it goes; else null
 */
public record Caution(CautionRule rule, Optional<Term> because, @Nullable String unlisted) {
  public Caution(CautionRule rule, Optional<Term> because) {
    this(rule, because, null);
  }

  /** What it is about, in words; empty for a general one. */
  public Optional<String> about() {
    return because.map(Term::label).or(() -> Optional.ofNullable(unlisted));
  }

  public boolean isGeneral() {
    return because.isEmpty() && unlisted == null;
  }
}
