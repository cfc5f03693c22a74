package club.emberwell.search.column;

import club.emberwell.quantity.QuantityKind;
import java.util.Optional;

/**
 * The numbers of every matching trial, one array element each, in no particular order. NaN = not
 * given. Entities are small integers (their {@code number} column) so that grouping costs nothing.
 *
 * @param size how many trials
 * @param member number of the member whose voice it is
 * @param machine number of the machine, 0 = described in the report only
 * @param report number of the report
 * @param process ordinal of {@link club.emberwell.laser.Process}
 * @param band ordinal of {@link club.emberwell.laser.WavelengthBand}
 * @param regime ordinal of {@link club.emberwell.laser.Regime}
 * @param effect ordinal of {@link club.emberwell.laser.Effect}
 * @param values by {@link Measure}, canonical units
 * @param properties by {@link Property}: small integer codes, -1 = not given
 */
public record TrialColumns(
    int size,
    long[] member,
    long[] machine,
    long[] report,
    byte[] process,
    byte[] band,
    byte[] regime,
    byte[] effect,
    double[][] values,
    int[][] properties,
    PropertyLabels labels) {

  /** A numeric column, with its word in the API and on pages. */
  public enum Measure {
    POWER_PERCENT("powerPercent", "Power, share of rated", QuantityKind.POWER_PERCENT),
    POWER_W("power", "Average power", QuantityKind.POWER),
    SPEED("speed", "Speed", QuantityKind.SPEED),
    LINE_SPACING("lineSpacing", "Line spacing", QuantityKind.LINE_SPACING),
    PASSES("passes", "Passes", null),
    REPETITION_RATE("repetitionRate", "Pulse repetition rate", QuantityKind.REPETITION_RATE),
    PULSE_DURATION("pulseDuration", "Pulse duration", QuantityKind.PULSE_DURATION),
    FOCUS_OFFSET("focusOffset", "Focus offset", QuantityKind.FOCUS_OFFSET),
    AREAL_DOSE("arealDose", "Nominal dose", QuantityKind.AREAL_DOSE),
    LINE_DOSE("lineDose", "Nominal line dose", QuantityKind.LINE_DOSE),
    PEAK_FLUENCE("peakFluence", "Peak fluence", QuantityKind.FLUENCE),
    BEAM_DIAMETER("beamDiameter", "Beam diameter", QuantityKind.BEAM_DIAMETER),
    RATED_POWER("ratedPower", "Rated power", QuantityKind.POWER),
    THICKNESS("thickness", "Thickness", QuantityKind.THICKNESS),
    QUALITY("quality", "Quality", null),
    /** Days since 1970-01-01. */
    POSTED("posted", "Posted", null);

    private final String code;
    private final String label;
    private final QuantityKind dimension;

    Measure(String code, String label, QuantityKind dimension) {
      this.code = code;
      this.label = label;
      this.dimension = dimension;
    }

    public String code() {
      return code;
    }

    public String label() {
      return label;
    }

    /** What it measures; empty for counts and dates. */
    public Optional<QuantityKind> dimension() {
      return Optional.ofNullable(dimension);
    }
  }

  /** A recorded property that could explain why voices differ. */
  public enum Property {
    AIR_ASSIST,
    DIRECTION,
    CROSS_PASS,
    LENS,
    MATERIAL,
    COATING,
    COLOUR,
    LOT,
    CONTROLLER_VERSION,
    MOTION,
    POWER_BASIS
  }

  /** Names for the codes in {@link #properties}. */
  public interface PropertyLabels {
    String label(Property property, int code);

    /** The stored value: the slug of a term, otherwise the label. */
    default String value(Property property, int code) {
      return label(property, code);
    }
  }

  public double[] values(Measure measure) {
    return values[measure.ordinal()];
  }

  public int[] property(Property property) {
    return properties[property.ordinal()];
  }
}
