package club.emberwell.web.range;

import club.emberwell.laser.dose.Settable;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Interval;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Arrays;

/** Values of a measure in the reader's unit. */
public record MeasureText(Measure measure, UnitPreferences reader) {

  private static final int FEWEST_DIGITS = 2;
  private static final int MOST_DIGITS = 3;

  public double value(double canonical) {
    return measure
        .dimension()
        .map(d -> QuantityPrinter.value(canonical, d, reader))
        .orElse(canonical);
  }

  /** A number that already is in the reader's unit. */
  public String tick(double inReadersUnit) {
    return QuantityPrinter.number(inReadersUnit, reader.style());
  }

  public double[] values(double[] canonical) {
    return Arrays.stream(canonical).map(this::value).toArray();
  }

  /** Both ends in the reader's unit, smaller first: more lines per inch is less spacing. */
  public double[] ends(double low, double high) {
    double a = value(low);
    double b = value(high);
    return new double[] {Math.min(a, b), Math.max(a, b)};
  }

  public String unit() {
    return measure.dimension().map(d -> QuantityPrinter.unitLabel(d, reader)).orElse("");
  }

  /** Two digits of a canonical value, in the reader's unit, without it. */
  public String told(double canonical) {
    return shown(value(canonical));
  }

  /**
   * A computed speed as it can be set in the reader's unit, without it.
   *
   * @param top the machine's largest in mm/s; null = not known
   */
  public String settable(double computed, Double top) {
    return tick(value(Settable.speed(computed, top, reader)));
  }

  /**
   * As many digits as are known: down to the first digit of half its interval, but two at least and
   * three at most.
   *
   * @param half of the interval, canonical; NaN = not known, 0 = exactly known
   */
  public String told(double canonical, double half) {
    if (!(half >= 0)) {
      return told(canonical);
    }
    double shown = value(canonical);
    double reach = Math.abs(value(canonical + half) - shown);
    if (reach == 0) {
      return rounded(shown, MOST_DIGITS);
    }
    int digits = exponent(shown) - exponent(reach) + 1;
    return rounded(shown, Math.max(FEWEST_DIGITS, Math.min(MOST_DIGITS, digits)));
  }

  /** As {@link #told(double, double)}, with the unit. */
  public String measured(double canonical, double half) {
    return (told(canonical, half) + " " + unit()).strip();
  }

  /** From one end to the other, to the digits of half of what lies between. */
  public String ends(Interval interval) {
    double half = interval.width() / 2;
    String low = told(interval.low(), half);
    String high = told(interval.high(), half);
    return value(interval.low()) <= value(interval.high())
        ? low + " to " + high
        : high + " to " + low;
  }

  /** Two digits of what already is in the reader's unit. */
  public String shown(double inReadersUnit) {
    return rounded(inReadersUnit, FEWEST_DIGITS);
  }

  /** Whether it is an energy per area, not per length. */
  public boolean areal() {
    return measure == Measure.AREAL_DOSE;
  }

  private String rounded(double value, int digits) {
    return Double.isFinite(value)
        ? QuantityPrinter.number(
            new BigDecimal(value)
                .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                .doubleValue(),
            reader.style())
        : tick(value);
  }

  private static int exponent(double value) {
    return (int) Math.floor(Math.log10(Math.abs(value)));
  }
}
