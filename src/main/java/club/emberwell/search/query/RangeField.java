package club.emberwell.search.query;

import club.emberwell.quantity.QuantityKind;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.TrialSnapshot;
import java.time.Duration;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;

/**
 * A number a search can be limited by. The parameters are the stem with {@code Min} and {@code
 * Max}; dates are {@code postedAfter} and {@code postedBefore}.
 */
public enum RangeField {
  /** Average power, W. */
  POWER("power", "Average power", QuantityKind.POWER, (r, t) -> t.derived().averagePowerW()),
  /** As written in percent of the rated power. */
  POWER_PERCENT(
      "powerPercent", "Power", QuantityKind.POWER_PERCENT, (r, t) -> t.settings().powerPercent()),
  SPEED("speed", "Speed", QuantityKind.SPEED, (r, t) -> t.settings().speedMmS()),
  LINE_SPACING(
      "lineSpacing",
      "Line spacing",
      QuantityKind.LINE_SPACING,
      (r, t) -> t.settings().lineSpacingMm()),
  REPETITION_RATE(
      "repetitionRate",
      "Repetition rate",
      QuantityKind.REPETITION_RATE,
      (r, t) -> t.settings().repetitionRateKhz()),
  PULSE_DURATION(
      "pulseDuration",
      "Pulse duration",
      QuantityKind.PULSE_DURATION,
      (r, t) -> t.settings().pulseDurationNs()),
  AREAL_DOSE("arealDose", "Areal dose", QuantityKind.AREAL_DOSE, (r, t) -> t.derived().arealDose()),
  LINE_DOSE("lineDose", "Line dose", QuantityKind.LINE_DOSE, (r, t) -> t.derived().lineDose()),
  THICKNESS("thickness", "Thickness", QuantityKind.THICKNESS, (r, t) -> r.work().thicknessMm()),
  RATED_POWER("ratedPower", "Rated power", QuantityKind.POWER, (r, t) -> r.laser().ratedPowerW()),
  WAVELENGTH(
      "wavelength", "Wavelength", QuantityKind.WAVELENGTH, (r, t) -> r.laser().wavelengthNm()),
  BEAM_DIAMETER(
      "beamDiameter",
      "Beam diameter",
      QuantityKind.BEAM_DIAMETER,
      (r, t) -> r.laser().beamDiameterUm()),
  /** Days since 1970-01-01, UTC. */
  POSTED("posted", "Posted", null, (r, t) -> Days.of(r));

  /** Keeps a value that went through a unit conversion inside a limit it equals. */
  private static final double TOLERANCE = 1e-9;

  private final String stem;
  private final String label;
  private final QuantityKind dimension;
  private final BiFunction<ReportSnapshot, TrialSnapshot, Double> value;

  RangeField(
      String stem,
      String label,
      QuantityKind dimension,
      BiFunction<ReportSnapshot, TrialSnapshot, Double> value) {
    this.stem = stem;
    this.label = label;
    this.dimension = dimension;
    this.value = value;
  }

  public String stem() {
    return stem;
  }

  public String label() {
    return label;
  }

  /** What it measures; empty for a date. */
  public Optional<QuantityKind> dimension() {
    return Optional.ofNullable(dimension);
  }

  public static Optional<RangeField> of(String stem) {
    return Stream.of(values()).filter(field -> field.stem.equals(stem)).findFirst();
  }

  /** Parameter of the lower limit. */
  public String minParameter() {
    return stem + (this == POSTED ? "After" : "Min");
  }

  /** Parameter of the upper limit. */
  public String maxParameter() {
    return stem + (this == POSTED ? "Before" : "Max");
  }

  /** The value of a trial in canonical units, null where it says nothing. */
  public Double valueOf(ReportSnapshot report, TrialSnapshot trial) {
    return value.apply(report, trial);
  }

  /** True where a value lies within limits, both inclusive; a missing value never does. */
  public static boolean within(Double value, SearchQuery.Limits limits) {
    return value != null && value >= lowest(limits) && value <= highest(limits);
  }

  public static double lowest(SearchQuery.Limits limits) {
    Double min = limits.min();
    return min == null ? Double.NEGATIVE_INFINITY : min - Math.abs(min) * TOLERANCE;
  }

  public static double highest(SearchQuery.Limits limits) {
    Double max = limits.max();
    return max == null ? Double.POSITIVE_INFINITY : max + Math.abs(max) * TOLERANCE;
  }

  public String field() {
    return "r_" + stem;
  }

  /** Whole days since 1970-01-01 in UTC. */
  public static final class Days {
    private Days() {}

    public static double of(ReportSnapshot report) {
      return Math.floorDiv(report.createdAt().toEpochMilli(), Duration.ofDays(1).toMillis());
    }
  }
}
