package club.emberwell.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * Quantities for people, in the units they chose. What was typed is printed exactly, so that it
 * reads back as the same quantity; what was computed (a double) is printed with four digits.
 */
public final class QuantityPrinter {
  /** From the fewest digits that may do to all we store. */
  private static final int[] PRECISIONS = {4, 8, 12, 16, 20, 24, 28, 32, 34};

  /** Figures that a person sets. */
  private static final int FEW = 3;

  /** A value is moved by half of this share at most (own rule, no source). */
  private static final double SETTABLE_SHARE = 0.05;

  private static final double SAME = 1e-9;

  private QuantityPrinter() {}

  /**
   * The exact text: {@code QuantityReader.read(q.kind(), text, preferences.style())} gives the same
   * value. Where the chosen unit can't say it in 34 digits, in the canonical unit instead.
   */
  public static String print(Quantity quantity, UnitPreferences preferences) {
    return print(quantity.value(), quantity.kind(), preferences);
  }

  /** The exact text of a canonical value; see {@link #print(Quantity, UnitPreferences)}. */
  public static String print(BigDecimal canonical, QuantityKind kind, UnitPreferences preferences) {
    UnitChoice unit = preferences.unit(kind);
    Optional<String> chosen = exact(canonical, kind, unit, preferences.style());
    UnitChoice fallback = canonicalChoice(kind);
    return chosen
        .or(() -> exact(canonical, kind, fallback, preferences.style()))
        .orElseGet(() -> canonical.toPlainString() + " " + fallback.label());
  }

  /** A computed value in the chosen unit, four significant digits: {@code 12.35 in/s}. */
  public static String print(double canonical, QuantityKind kind, UnitPreferences preferences) {
    UnitChoice unit = preferences.unit(kind);
    return number(value(canonical, kind, preferences), preferences.style()) + " " + unit.label();
  }

  /**
   * A number for people: four significant digits (more only before the decimal mark), no exponent,
   * the style's decimal mark; a dash for what is not finite.
   */
  public static String number(double value, NumberStyle style) {
    if (!Double.isFinite(value)) {
      return "–";
    }
    BigDecimal exact = new BigDecimal(value);
    BigDecimal rounded =
        exact.precision() - exact.scale() > QuantityLimits.SHOWN_DIGITS
            ? exact.setScale(0, RoundingMode.HALF_EVEN)
            : exact.round(new MathContext(QuantityLimits.SHOWN_DIGITS, RoundingMode.HALF_EVEN));
    return mark(ExactNumbers.plain(rounded).toPlainString(), style);
  }

  /** A canonical value in the chosen unit, for plots and tables. */
  public static double value(double canonical, QuantityKind kind, UnitPreferences preferences) {
    String code = preferences.unit(kind).code();
    return UcumCodes.tabled(code, kind).fromCanonical(canonical);
  }

  /**
   * A computed value moved to one that can be set in the chosen unit: 22 mm/s is 0.8661 in/s, and
   * 0.86 in/s is as good. What has few figures there stays as it is.
   *
   * @param top canonical, not passed; null = no limit
   * @return canonical
   */
  public static double settable(
      double canonical, Double top, QuantityKind kind, UnitPreferences preferences) {
    double shown = value(canonical, kind, preferences);
    if (!(shown > 0) || Math.abs(shown / RoundNumber.significant(shown, FEW) - 1) < SAME) {
      return canonical;
    }
    double most = shown * SETTABLE_SHARE;
    double near = canonical(RoundNumber.near(shown, most), kind, preferences);
    return top != null && near > top
        ? canonical(RoundNumber.below(shown, most), kind, preferences)
        : near;
  }

  /** The canonical value of a number in the chosen unit. */
  public static double canonical(double shown, QuantityKind kind, UnitPreferences preferences) {
    Conversion conversion = UcumCodes.tabled(preferences.unit(kind).code(), kind);
    return ExactNumbers.decimal(
            conversion.toCanonical(ExactNumbers.fraction(BigDecimal.valueOf(shown))))
        .doubleValue();
  }

  /** The chosen unit as people see it: {@code in/s}. */
  public static String unitLabel(QuantityKind kind, UnitPreferences preferences) {
    return preferences.unit(kind).label();
  }

  /** The pieces of the JSON form. */
  public static CanonicalValue canonical(Quantity quantity) {
    return new CanonicalValue(
        ExactNumbers.plain(quantity.value()), quantity.kind().canonicalUnit());
  }

  private static UnitChoice canonicalChoice(QuantityKind kind) {
    return UnitPreferences.choices(kind).stream()
        .filter(choice -> choice.code().equals(kind.canonicalUnit()))
        .findFirst()
        .orElseThrow();
  }

  private static Optional<String> exact(
      BigDecimal canonical, QuantityKind kind, UnitChoice unit, NumberStyle style) {
    if (unit.reciprocal() && canonical.signum() == 0) {
      return Optional.empty();
    }
    Conversion conversion = UcumCodes.tabled(unit.code(), kind);
    BigDecimal full =
        ExactNumbers.decimal(conversion.fromCanonical(ExactNumbers.fraction(canonical)));
    for (int digits : PRECISIONS) {
      BigDecimal rounded = full.round(new MathContext(digits, RoundingMode.HALF_EVEN));
      if (isSame(canonical, rounded, conversion)) {
        String text = spelled(rounded, style) + " " + unit.label();
        return text.length() <= QuantityLimits.TEXT ? Optional.of(text) : Optional.empty();
      }
    }
    return Optional.empty();
  }

  private static boolean isSame(BigDecimal canonical, BigDecimal value, Conversion conversion) {
    return (value.signum() != 0 || !conversion.reciprocal())
        && ExactNumbers.decimal(conversion.toCanonical(ExactNumbers.fraction(value)))
                .compareTo(canonical)
            == 0;
  }

  private static String spelled(BigDecimal value, NumberStyle style) {
    return style == NumberStyle.ANY
        ? NumberText.unmistakable(value)
        : mark(ExactNumbers.plain(value).toPlainString(), style);
  }

  private static String mark(String plain, NumberStyle style) {
    return style == NumberStyle.DECIMAL_COMMA ? plain.replace('.', ',') : plain;
  }
}
