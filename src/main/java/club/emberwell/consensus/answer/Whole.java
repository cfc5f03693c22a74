package club.emberwell.consensus.answer;

import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;

/**
 * One trial with all that its machine was set to: real settings that go together, as medians of
 * single settings need not.
 *
 * @param laser as far as the columns know it: without source and lens
 * @param settings power in the basis its author chose
 * @param dose nominal, canonical unit of the work; NaN where it is not known
 * @param quality 1 to 5, null where not said
 */
public record Whole(
    Made made, Laser laser, Settings settings, double dose, Effect effect, Integer quality) {

  /**
   * Whose it is and where it stands.
   *
   * @param member number
   * @param machine number, 0 = described in the report only
   * @param report number
   * @param trial its place in the report, 0 = first
   */
  public record Made(long member, long machine, long report, int trial) {}

  static Whole of(Group group, int row) {
    TrialColumns columns = group.columns();
    Double quality = value(columns, Measure.QUALITY, row);
    return new Whole(
        new Made(
            group.member(row),
            columns.machine()[row],
            columns.report()[row],
            columns.who().trial()[row]),
        laser(group, row),
        settings(group, row),
        columns.values(Range.doseMeasure(group.key()))[row],
        Effect.values()[columns.effect()[row]],
        quality == null ? null : Integer.valueOf(quality.intValue()));
  }

  private static Laser laser(Group group, int row) {
    TrialColumns columns = group.columns();
    Double rated = value(columns, Measure.RATED_POWER, row);
    Double wavelength = value(columns, Measure.WAVELENGTH, row);
    int motion = group.code(Property.MOTION, row);
    return new Laser(
        null,
        wavelength == null ? nominalNm(group.key().light()) : wavelength,
        rated == null ? Double.NaN : rated,
        motion < 0 ? null : Motion.of(columns.labels().label(Property.MOTION, motion)).orElse(null),
        Emission.of(group.key().regime()),
        null,
        value(columns, Measure.BEAM_DIAMETER, row),
        null);
  }

  private static Settings settings(Group group, int row) {
    TrialColumns columns = group.columns();
    Double percent = value(columns, Measure.POWER_PERCENT, row);
    Settings settings =
        percent == null
            ? Settings.ofWatts(value(columns, Measure.POWER_W, row))
            : Settings.NONE.with(Setting.POWER, new Amount(QuantityKind.POWER_PERCENT, percent));
    for (Setting setting : Setting.values()) {
      if (!setting.value().choices().isEmpty()) {
        settings = settings.atPlace(setting, group.code(Property.of(setting), row));
      } else if (setting.value().isNumber() && setting != Setting.POWER) {
        settings = settings.withNumber(setting, value(columns, Measure.of(setting), row));
      }
    }
    return settings;
  }

  private static Double value(TrialColumns columns, Measure measure, int row) {
    double value = columns.values(measure)[row];
    return Double.isNaN(value) ? null : value;
  }

  /** A wavelength inside the band, as peers of one band are one class; NaN where none is known. */
  static double nominalNm(RangeKey.Light light) {
    return switch (light.band()) {
      case UV_355 -> 355;
      case BLUE -> 450;
      case GREEN_532 -> 532;
      case NEAR_INFRARED -> 1064;
      case CO2_10600 -> 10_600;
      case OTHER -> light.nm() == 0 ? Double.NaN : light.nm();
    };
  }
}
