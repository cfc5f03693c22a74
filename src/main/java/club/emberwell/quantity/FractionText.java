package club.emberwell.quantity;

import club.emberwell.quantity.Candidates.Amount;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.hipparchus.fraction.BigFraction;

/**
 * Fractions as rulers and drawings have them: {@code 1/8}, {@code 1 1/2}, {@code 1-1/2}; of other
 * things than lengths only those that cannot be two values with a slash between.
 */
final class FractionText {
  private static final Pattern FRACTION =
      Pattern.compile(
          "(?:([0-9]{1,4})[- ])?([0-9]{1,4}) ?/ ?([0-9]{1,4})(?![0-9.,]) ?+(?!-|/|~|\\.|to |bis )(.*)");

  /** Most digits above the line beside a whole number: three would look like a group. */
  private static final int WITH_WHOLE = 2;

  /** Below the line of fractions that have a character of their own, and of an inch. */
  private static final Set<Integer> SMALL = Set.of(2, 3, 4, 5, 6, 8, 16);

  private FractionText() {}

  /**
   * @param numbers none: no fraction after all (zero below, or three halves beside a whole)
   * @param sides above and below the line
   */
  record Found(List<Amount> numbers, String unit, boolean mixed, List<Integer> sides) {

    /** Half an inch a second, but not 20/40 W, nor 300/1000 mm/s. */
    boolean isUsual() {
      int above = sides.get(0);
      int below = sides.get(1);
      return mixed || above == 1 || numbers.size() > 1 || above < below && SMALL.contains(below);
    }
  }

  /** Empty where the text does not look like a fraction. {@code text} has no sign. */
  static Optional<Found> read(String text) {
    Matcher m = FRACTION.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    return Optional.of(
        new Found(
            amounts(m.group(1), m.group(2), m.group(3)),
            m.group(4),
            m.group(1) != null,
            List.of(Integer.parseInt(m.group(2)), Integer.parseInt(m.group(3)))));
  }

  private static List<Amount> amounts(String whole, String above, String below) {
    int n = Integer.parseInt(above);
    int d = Integer.parseInt(below);
    if (d == 0 || above.startsWith("0")) {
      return List.of();
    }
    // "1 200/300" could be a group of three digits: not a mixed number anybody measures with.
    if (whole != null && (n >= d || above.length() > WITH_WHOLE)) {
      return List.of();
    }
    if (whole != null) {
      return List.of(mixed(Integer.parseInt(whole), n, d));
    }
    List<Amount> all = new ArrayList<>();
    all.add(new Amount(new BigFraction(n, d), n + "/" + d));
    if (n > d) {
      runTogether(above, d).forEach(all::add);
    }
    if (all.size() > 1) {
      Optional<Amount> decimal = decimal(n, d);
      decimal.ifPresentOrElse(a -> all.set(0, a), () -> all.remove(0));
    }
    return all;
  }

  private static Amount mixed(int whole, int n, int d) {
    return new Amount(new BigFraction(n, d).add(new BigFraction(whole)), whole + " " + n + "/" + d);
  }

  // Copying 1½ out of a page often yields 11/2: five and a half, or one and a half?
  private static List<Amount> runTogether(String above, int d) {
    List<Amount> split = new ArrayList<>();
    for (int i = 1; i < above.length(); i++) {
      int n = Integer.parseInt(above.substring(i));
      if (above.charAt(i) != '0' && above.length() - i <= WITH_WHOLE && n < d) {
        split.add(mixed(Integer.parseInt(above.substring(0, i)), n, d));
      }
    }
    return split;
  }

  private static Optional<Amount> decimal(int n, int d) {
    BigFraction value = new BigFraction(n, d);
    return ExactNumbers.endsAsDecimal(value)
        ? Optional.of(Amount.of(ExactNumbers.decimal(value)))
        : Optional.empty();
  }
}
