package club.emberwell.search.column;

import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.TrialSnapshot;
import club.emberwell.search.query.RangeField;
import java.util.function.BiFunction;

/** Names of the doc-value columns that every trial fills. */
public final class Columns {
  public static final String REPORT = "n_report";
  public static final String MEMBER = "n_member";
  public static final String MACHINE = "n_machine";
  public static final String TRIAL = "n_trial";
  public static final String VERSION = "n_version";
  public static final String CREATED = "n_created";
  public static final String CODES = "n_codes";
  public static final String ID_HIGH = "n_idHigh";
  public static final String ID_LOW = "n_idLow";

  /** The report's id as an indexed term. */
  public static final String ID = "id";

  public static final String LENS = "p_lens";
  public static final String LOT = "p_lot";

  private Columns() {}

  /** A measure that has a column of its own: raw bits of the double, NaN where not given. */
  public enum Own {
    POWER_PERCENT(TrialColumns.Measure.POWER_PERCENT, (r, t) -> t.settings().powerPercent()),
    POWER_W(TrialColumns.Measure.POWER_W, (r, t) -> t.derived().averagePowerW()),
    SPEED(TrialColumns.Measure.SPEED, (r, t) -> t.settings().speedMmS()),
    LINE_SPACING(TrialColumns.Measure.LINE_SPACING, (r, t) -> t.settings().lineSpacingMm()),
    REPETITION_RATE(
        TrialColumns.Measure.REPETITION_RATE, (r, t) -> t.settings().repetitionRateKhz()),
    PULSE_DURATION(TrialColumns.Measure.PULSE_DURATION, (r, t) -> t.settings().pulseDurationNs()),
    FOCUS_OFFSET(TrialColumns.Measure.FOCUS_OFFSET, (r, t) -> t.settings().focusOffsetMm()),
    AREAL_DOSE(TrialColumns.Measure.AREAL_DOSE, (r, t) -> t.derived().arealDose()),
    LINE_DOSE(TrialColumns.Measure.LINE_DOSE, (r, t) -> t.derived().lineDose()),
    PEAK_FLUENCE(TrialColumns.Measure.PEAK_FLUENCE, (r, t) -> t.derived().peakFluence()),
    BEAM_DIAMETER(TrialColumns.Measure.BEAM_DIAMETER, (r, t) -> r.laser().beamDiameterUm()),
    RATED_POWER(TrialColumns.Measure.RATED_POWER, (r, t) -> r.laser().ratedPowerW()),
    THICKNESS(TrialColumns.Measure.THICKNESS, (r, t) -> r.work().thicknessMm()),
    POSTED(TrialColumns.Measure.POSTED, (r, t) -> RangeField.Days.of(r));

    private final TrialColumns.Measure measure;
    private final BiFunction<ReportSnapshot, TrialSnapshot, Double> value;

    Own(TrialColumns.Measure measure, BiFunction<ReportSnapshot, TrialSnapshot, Double> value) {
      this.measure = measure;
      this.value = value;
    }

    public TrialColumns.Measure measure() {
      return measure;
    }

    public String field() {
      return "m_" + name();
    }

    public long bits(ReportSnapshot report, TrialSnapshot trial) {
      Double given = value.apply(report, trial);
      return Double.doubleToLongBits(given == null ? Double.NaN : given);
    }
  }
}
