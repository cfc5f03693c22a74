package club.emberwell.quantity;

import java.math.BigDecimal;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Unsigned numbers with either decimal mark and with groups of three. A single mark with exactly
 * three digits after it has two readings where both are well formed: {@code 4.500}, but neither
 * {@code 0.500} nor {@code 4500.125}, since no group starts with a zero or has four digits.
 */
final class NumberText {
  private static final Pattern PLAIN = Pattern.compile("([0-9]*)(?:([.,\u066b])([0-9]+))?");
  private static final Pattern EITHER = Pattern.compile("([1-9][0-9]{0,2})([.,])([0-9]{3})");
  private static final Pattern SPACED =
      Pattern.compile("([1-9][0-9]{0,2}([ '])[0-9]{3}(?:\\2[0-9]{3})*)(?:([.,\u066b])([0-9]+))?");
  private static final Pattern MIXED =
      Pattern.compile(
          "([1-9][0-9]{0,2}([.,])[0-9]{3}(?:\\2[0-9]{3})*)(?:(?!\\2)([.,\u066b])([0-9]+))");
  private static final Pattern REPEATED =
      Pattern.compile("([1-9][0-9]{0,2}([.,])[0-9]{3}(?:\\2[0-9]{3})+)(?:()())");
  private static final Pattern EXPONENT = Pattern.compile("(.+?)[eE]([+-]?[0-9]{1,2})");

  private NumberText() {}

  /** No reading: not a number. Two: the writer has to be asked. */
  static List<BigDecimal> read(String text, NumberStyle style) {
    Matcher exponent = EXPONENT.matcher(text);
    if (exponent.matches()) {
      int power = Integer.parseInt(exponent.group(2));
      return readings(exponent.group(1), style).stream()
          .map(n -> n.scaleByPowerOfTen(power))
          .toList();
    }
    return readings(text, style);
  }

  private static List<BigDecimal> readings(String text, NumberStyle style) {
    if (text.isEmpty()) {
      return List.of();
    }
    Matcher either = EITHER.matcher(text);
    if (either.matches()) {
      return either(either, style);
    }
    Matcher plain = PLAIN.matcher(text);
    if (plain.matches()) {
      return List.of(decimal(plain.group(1), plain.group(3)));
    }
    for (Pattern pattern : List.of(SPACED, MIXED, REPEATED)) {
      Matcher grouped = pattern.matcher(text);
      if (grouped.matches()) {
        return List.of(decimal(grouped.group(1).replaceAll("[^0-9]", ""), grouped.group(4)));
      }
    }
    return List.of();
  }

  private static List<BigDecimal> either(Matcher m, NumberStyle style) {
    BigDecimal asDecimal = decimal(m.group(1), m.group(3));
    BigDecimal asGroups = decimal(m.group(1) + m.group(3), null);
    boolean point = m.group(2).equals(".");
    return switch (style) {
      case ANY -> List.of(asDecimal, asGroups);
      case DECIMAL_POINT -> List.of(point ? asDecimal : asGroups);
      case DECIMAL_COMMA -> List.of(point ? asGroups : asDecimal);
    };
  }

  private static BigDecimal decimal(String whole, String part) {
    String digits = whole.isEmpty() ? "0" : whole;
    return new BigDecimal(part == null || part.isEmpty() ? digits : digits + "." + part);
  }

  /** Written so that {@link #read} takes it one way only, in any style. */
  static String unmistakable(BigDecimal value) {
    String plain = ExactNumbers.plain(value).toPlainString();
    String unsigned = plain.startsWith("-") ? plain.substring(1) : plain;
    return EITHER.matcher(unsigned).matches() ? plain + "0" : plain;
  }
}
