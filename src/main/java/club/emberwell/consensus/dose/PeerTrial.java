package club.emberwell.consensus.dose;

import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.VoiceSet;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The right trial of a voice whose dose lies nearest to the voice: real settings of a real machine,
 * where medians of single settings need not go together.
 *
 * @param distance of its ln dose from the middle of the group
 */
record PeerTrial(long member, Laser laser, Settings settings, double dose, double distance) {
  /** One for each voice, those nearest to the middle of the group first. */
  static List<PeerTrial> of(Group group, Spread dose) {
    VoiceSet voices = dose.voices();
    Dosed dosed = Dosed.of(group, dose);
    int[] best = new int[voices.size()];
    Arrays.fill(best, -1);
    for (int i = 0; i < dosed.size(); i++) {
      int voice = dosed.right(i) ? Arrays.binarySearch(voices.members(), dosed.member(i)) : -1;
      if (voice >= 0
          && (best[voice] < 0
              || far(dosed, i, voices.values()[voice])
                  < far(dosed, best[voice], voices.values()[voice]))) {
        best[voice] = i;
      }
    }
    double[] found =
        Arrays.stream(best)
            .filter(i -> i >= 0)
            .mapToDouble(i -> dosed.doses()[i])
            .sorted()
            .toArray();
    List<PeerTrial> trials = new ArrayList<>();
    for (int i : best) {
      if (i >= 0) {
        double middle = found[found.length / 2];
        trials.add(of(group, dosed.rows()[i], dosed.doses()[i], far(dosed, i, middle)));
      }
    }
    trials.sort(Comparator.comparingDouble(PeerTrial::distance));
    return List.copyOf(trials);
  }

  private static double far(Dosed dosed, int i, double dose) {
    return Math.abs(Math.log(dosed.doses()[i] / dose));
  }

  private static PeerTrial of(Group group, int row, double dose, double distance) {
    TrialColumns columns = group.columns();
    Settings settings = Settings.ofWatts(value(columns, Measure.POWER_W, row));
    for (Setting setting : Setting.values()) {
      if (setting.value().isNumber() && setting != Setting.POWER) {
        settings = settings.withNumber(setting, value(columns, Measure.of(setting), row));
      }
    }
    settings = settings.atPlace(Setting.CROSS_PASS, group.code(Property.CROSS_PASS, row));
    Double rated = value(columns, Measure.RATED_POWER, row);
    Laser laser =
        new Laser(
            null,
            nominalNm(group.key().band()),
            rated == null ? Double.NaN : rated,
            null,
            Emission.of(group.key().regime()),
            null,
            value(columns, Measure.BEAM_DIAMETER, row),
            null);
    return new PeerTrial(group.member(row), laser, settings, dose, distance);
  }

  private static Double value(TrialColumns columns, Measure measure, int row) {
    double value = columns.values(measure)[row];
    return Double.isNaN(value) ? null : value;
  }

  /** A wavelength inside the band; peers of one band are one class. NaN where there is none. */
  static double nominalNm(WavelengthBand band) {
    return switch (band) {
      case UV_355 -> 355;
      case BLUE -> 450;
      case GREEN_532 -> 532;
      case NEAR_INFRARED -> 1064;
      case CO2_10600 -> 10_600;
      case OTHER -> Double.NaN;
    };
  }
}
