package club.emberwell.quantity;

import club.emberwell.remark.Coded;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The kinds of quantity (VIM 1.2) that are measured here, with the canonical unit (UCUM) in which
 * it is stored and compared.
 */
public enum QuantityKind implements Coded {
  SPEED("mm/s", Dimension.SPEED),
  POWER("W", Dimension.POWER),
  POWER_PERCENT("%", Dimension.RATIO),
  LINE_SPACING("mm", Dimension.SPACING),
  REPETITION_RATE("kHz", Dimension.FREQUENCY),
  PULSE_DURATION("ns", Dimension.TIME),
  FOCUS_OFFSET("mm", Dimension.LENGTH, Sign.EITHER),
  THICKNESS("mm", Dimension.LENGTH),
  FOCAL_LENGTH("mm", Dimension.LENGTH),
  WAVELENGTH("nm", Dimension.LENGTH),
  BEAM_DIAMETER("um", Dimension.LENGTH),
  AREAL_DOSE("J/mm2", Dimension.AREAL_ENERGY),
  LINE_DOSE("J/mm", Dimension.LINE_ENERGY),
  PULSE_ENERGY("mJ", Dimension.ENERGY),
  PEAK_POWER("kW", Dimension.POWER),
  FLUENCE("J/cm2", Dimension.AREAL_ENERGY),
  IRRADIANCE("W/m2", Dimension.IRRADIANCE),
  DURATION("s", Dimension.TIME, Sign.NOT_NEGATIVE),
  AIR_FLOW("m3/h", Dimension.FLOW, Sign.NOT_NEGATIVE),
  /** Of rooms. */
  VOLUME("m3", Dimension.VOLUME),
  ANGLE("deg", Dimension.ANGLE, Sign.EITHER),
  /** Of a beam: the full angle by which it widens. */
  DIVERGENCE("mrad", Dimension.ANGLE),
  /** Of pieces, and of what lies on them. */
  LENGTH("mm", Dimension.LENGTH, Sign.NOT_NEGATIVE),
  ACCELERATION("mm/s2", Dimension.ACCELERATION);

  /** Which values can be meant. */
  enum Sign {
    POSITIVE,
    NOT_NEGATIVE,
    EITHER
  }

  private static final Pattern NEXT_WORD = Pattern.compile("_(.)");

  private final String canonicalUnit;
  private final Dimension dimension;
  private final Sign sign;

  QuantityKind(String canonicalUnit, Dimension dimension) {
    this(canonicalUnit, dimension, Sign.POSITIVE);
  }

  QuantityKind(String canonicalUnit, Dimension dimension, Sign sign) {
    this.canonicalUnit = canonicalUnit;
    this.dimension = dimension;
    this.sign = sign;
  }

  /** {@code lineSpacing} of {@code LINE_SPACING}. */
  @Override
  public String code() {
    return NEXT_WORD
        .matcher(name().toLowerCase(Locale.ROOT))
        .replaceAll(word -> word.group(1).toUpperCase(Locale.ROOT));
  }

  /** UCUM code of the unit in which quantities of this kind are stored. */
  public String canonicalUnit() {
    return canonicalUnit;
  }

  Dimension dimension() {
    return dimension;
  }

  boolean mayBeNegative() {
    return sign == Sign.EITHER;
  }

  boolean mayBeZero() {
    return sign != Sign.POSITIVE;
  }
}
