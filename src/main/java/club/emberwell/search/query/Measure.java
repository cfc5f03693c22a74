package club.emberwell.search.query;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Setting;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/**
 * A numeric column, with its word in the API and on pages: first the settings that are numbers in
 * the order of their catalogue, then what is known beside them.
 */
public final class Measure implements Comparable<Measure> {
  /** The value of a trial, null where it says nothing. */
  interface Source extends BiFunction<ReportSnapshot, TrialSnapshot, Double> {}

  private static final List<Measure> ALL = new ArrayList<>();

  public static final Measure POWER_PERCENT =
      new Measure(
          "powerPercent",
          "Power, % of rated",
          QuantityKind.POWER_PERCENT,
          (r, t) -> t.settings().powerPercent());

  /** Average power, whichever way the power was given. */
  public static final Measure POWER_W =
      new Measure(
          "power", "Average power", QuantityKind.POWER, (r, t) -> t.derived().averagePowerW());

  /** What a machine was set to. */
  public static final List<Measure> SETTINGS = settings();

  public static final Measure SPEED = of(Setting.SPEED);
  public static final Measure LINE_SPACING = of(Setting.LINE_SPACING);
  public static final Measure REPETITION_RATE = of(Setting.REPETITION_RATE);
  public static final Measure PULSE_DURATION = of(Setting.PULSE_DURATION);

  /** Packed; not given counts as one. */
  public static final Measure PASSES = of(Setting.PASSES);

  public static final Measure AREAL_DOSE =
      new Measure(
          "arealDose",
          "Energy per area (dose)",
          QuantityKind.AREAL_DOSE,
          (r, t) -> t.derived().arealDose());
  public static final Measure LINE_DOSE =
      new Measure(
          "lineDose",
          "Energy per length (line dose)",
          QuantityKind.LINE_DOSE,
          (r, t) -> t.derived().lineDose());
  public static final Measure PEAK_FLUENCE =
      new Measure(
          "peakFluence", "Peak fluence", QuantityKind.FLUENCE, (r, t) -> t.derived().peakFluence());
  public static final Measure BEAM_DIAMETER =
      new Measure(
          "beamDiameter",
          "Spot size",
          QuantityKind.BEAM_DIAMETER,
          (r, t) -> r.laser().beamDiameterUm());
  public static final Measure RATED_POWER =
      new Measure(
          "ratedPower", "Rated power", QuantityKind.POWER, (r, t) -> r.laser().ratedPowerW());

  public static final Measure WAVELENGTH =
      new Measure(
          "wavelength", "Wavelength", QuantityKind.WAVELENGTH, (r, t) -> r.laser().wavelengthNm());

  /** What is measured of the work. */
  static final List<Measure> WORK = work();

  /** Packed. */
  public static final Measure QUALITY =
      new Measure(
          "quality",
          "Quality",
          null,
          (r, t) -> t.quality() == null ? null : t.quality().doubleValue());

  /** Days since 1970-01-01. */
  static final Measure POSTED =
      new Measure("posted", "Posted", null, (r, t) -> RangeField.Days.of(r));

  private final int place;
  private final String code;
  private final String label;
  private final QuantityKind kind;
  private final Source source;

  private Measure(String code, String label, QuantityKind kind, Source source) {
    this.place = ALL.size();
    this.code = code;
    this.label = label;
    this.kind = kind;
    this.source = source;
    ALL.add(this);
  }

  /** Power has its two measures already. */
  private static List<Measure> settings() {
    for (Setting setting : Setting.values()) {
      if (setting.value().isNumber() && setting != Setting.POWER) {
        QuantityKind kind = setting.value().kind().orElse(null);
        new Measure(setting.code(), setting.label(), kind, (r, t) -> t.settings().number(setting));
      }
    }
    return List.copyOf(ALL);
  }

  private static List<Measure> work() {
    List<Measure> all = new ArrayList<>();
    for (WorkProperty work : WorkProperty.of(Shape.QUANTITY)) {
      QuantityKind kind = work.value().kind();
      all.add(new Measure(work.code(), work.label(), kind, (r, t) -> r.work().number(work)));
    }
    return List.copyOf(all);
  }

  /** The measure of a setting that is a number; of power the average one. */
  public static Measure of(Setting setting) {
    return SETTINGS.stream().filter(m -> m.code.equals(setting.code())).findFirst().orElseThrow();
  }

  /** The dose by which work of this kind is compared. */
  public static Measure dose(DoseKind kind) {
    return kind == DoseKind.AREAL ? AREAL_DOSE : LINE_DOSE;
  }

  public static List<Measure> all() {
    return List.copyOf(ALL);
  }

  /** Its place among all. */
  public int place() {
    return place;
  }

  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** What it measures; empty for counts and dates. */
  public Optional<QuantityKind> dimension() {
    return Optional.ofNullable(kind);
  }

  /** Name of its own column; raw bits of the double, NaN where not given. */
  public String field() {
    return "m_" + code;
  }

  Double of(ReportSnapshot report, TrialSnapshot trial) {
    return source.apply(report, trial);
  }

  public long bits(ReportSnapshot report, TrialSnapshot trial) {
    Double given = of(report, trial);
    return Double.doubleToLongBits(given == null ? Double.NaN : given);
  }

  public boolean isPacked() {
    return this == PASSES || this == QUALITY;
  }

  @Override
  public int compareTo(Measure other) {
    return Integer.compare(place, other.place);
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return code.hashCode();
  }

  @Override
  public String toString() {
    return code;
  }
}
