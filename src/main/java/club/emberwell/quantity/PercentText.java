package club.emberwell.quantity;

import club.emberwell.quantity.Candidates.Amount;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hipparchus.fraction.BigFraction;

/** Shares of the rated power that name their whole: {@code 8/10}, {@code S800 of S1000}. */
final class PercentText {
  private static final Pattern RATIO =
      Pattern.compile("(?i)s? ?([0-9.,]+) ?(?:/|out of|of) ?s?([0-9.,]+)");
  private static final Pattern SPINDLE_WORD = Pattern.compile("(?i)s ?([0-9.,]+)");

  /** Wholes in use for an S word: common practice, no source. */
  private static final List<Integer> USUAL_WHOLES = List.of(1000, 255, 100);

  private PercentText() {}

  /** The share in percent; none where either number can't be taken one way. */
  static Optional<List<Amount>> ratio(String text, NumberStyle style) {
    Matcher m = RATIO.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    List<BigDecimal> part = NumberText.read(m.group(1), style);
    List<BigDecimal> whole = NumberText.read(m.group(2), style);
    if (part.size() != 1 || whole.size() != 1 || whole.get(0).signum() == 0) {
      return Optional.of(List.of());
    }
    BigFraction share =
        ExactNumbers.fraction(part.get(0)).divide(ExactNumbers.fraction(whole.get(0)));
    return Optional.of(List.of(new Amount(share.multiply(100), text)));
  }

  /** Readings of an S word without its whole, or empty where the text is none. */
  static Optional<List<String>> spindleWord(String text) {
    Matcher m = SPINDLE_WORD.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    List<BigDecimal> part = NumberText.read(m.group(1), NumberStyle.ANY);
    if (part.size() != 1 || part.get(0).signum() == 0) {
      return Optional.of(List.of());
    }
    return Optional.of(
        USUAL_WHOLES.stream()
            .filter(whole -> part.get(0).compareTo(BigDecimal.valueOf(whole)) <= 0)
            .map(whole -> "S" + NumberText.unmistakable(part.get(0)) + "/" + whole)
            .toList());
  }

  /** A bare number: of one hundred, or of one. */
  static List<Amount> bare(List<Amount> numbers) {
    return numbers.stream()
        .flatMap(
            n ->
                n.value().compareTo(BigFraction.ONE) > 0
                    ? List.of(n).stream()
                    : List.of(n, Amount.of(ExactNumbers.decimal(n.value().multiply(100)))).stream())
        .toList();
  }
}
