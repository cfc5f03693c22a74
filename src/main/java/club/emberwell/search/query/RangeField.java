package club.emberwell.search.query;

import club.emberwell.laser.Setting;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A number a search can be limited by. The parameters are the stem with {@code Min} and {@code
 * Max}; dates are {@code postedAfter} and {@code postedBefore}.
 */
public final class RangeField {
  /** Whole days since 1970-01-01, UTC. */
  static final RangeField POSTED = new RangeField(Measure.POSTED.label(), Measure.POSTED);

  public static final RangeField WAVELENGTH =
      new RangeField(Measure.WAVELENGTH.label(), Measure.WAVELENGTH);

  /** Keeps a value that went through a unit conversion inside a limit it equals. */
  private static final double TOLERANCE = 1e-9;

  private static final List<RangeField> ALL = fields();

  private final String stem;
  private final String label;
  private final QuantityKind dimension;
  private final Measure.Source value;

  private RangeField(String stem, String label, QuantityKind dimension, Measure.Source value) {
    this.stem = stem;
    this.label = label;
    this.dimension = dimension;
    this.value = value;
  }

  private RangeField(String label, Measure measure) {
    this(measure.code(), label, measure.dimension().orElse(null), measure::of);
  }

  private static List<RangeField> fields() {
    List<RangeField> all = new ArrayList<>();
    all.add(new RangeField("Average power", Measure.POWER_W));
    all.add(new RangeField("Power", Measure.POWER_PERCENT));
    for (Setting setting : Setting.values()) {
      if (setting.value().isSearchable() && setting != Setting.POWER) {
        all.add(new RangeField(setting.label(), Measure.of(setting)));
      }
    }
    all.add(new RangeField("Energy per area (dose)", Measure.AREAL_DOSE));
    all.add(new RangeField("Energy per length (line dose)", Measure.LINE_DOSE));
    Measure.WORK.forEach(measure -> all.add(new RangeField(measure.label(), measure)));
    all.add(new RangeField(Measure.RATED_POWER.label(), Measure.RATED_POWER));
    all.add(WAVELENGTH);
    all.add(new RangeField(Measure.BEAM_DIAMETER.label(), Measure.BEAM_DIAMETER));
    all.add(POSTED);
    return List.copyOf(all);
  }

  public static List<RangeField> all() {
    return ALL;
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
    return ALL.stream().filter(field -> field.stem.equals(stem)).findFirst();
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
