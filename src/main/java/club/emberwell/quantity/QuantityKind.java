package club.emberwell.quantity;

import club.emberwell.remark.Coded;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * The kinds of quantity (VIM 1.2) that are measured here, with the canonical unit (UCUM) in which
 * it is stored and compared.
 */
public enum QuantityKind implements Coded {
  SPEED("mm/s"),
  POWER("W"),
  POWER_PERCENT("%"),
  LINE_SPACING("mm"),
  REPETITION_RATE("kHz"),
  PULSE_DURATION("ns"),
  FOCUS_OFFSET("mm"),
  THICKNESS("mm"),
  FOCAL_LENGTH("mm"),
  WAVELENGTH("nm"),
  BEAM_DIAMETER("um"),
  AREAL_DOSE("J/mm2"),
  LINE_DOSE("J/mm"),
  PULSE_ENERGY("mJ"),
  PEAK_POWER("kW"),
  FLUENCE("J/cm2"),
  IRRADIANCE("W/m2"),
  DURATION("s"),
  AIR_FLOW("m3/h");

  private static final Pattern NEXT_WORD = Pattern.compile("_(.)");

  private final String canonicalUnit;

  QuantityKind(String canonicalUnit) {
    this.canonicalUnit = canonicalUnit;
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
}
