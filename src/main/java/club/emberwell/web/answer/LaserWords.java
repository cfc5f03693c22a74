package club.emberwell.web.answer;

import club.emberwell.consensus.range.RangeKey;
import club.emberwell.laser.Regime;

/** Kinds of laser as people name them: "CO2, 10.6 µm". */
final class LaserWords {
  private LaserWords() {}

  static String of(RangeKey key) {
    String light = key.light().words();
    String regime = key.regime() == Regime.CW ? "" : ", " + key.regime().label();
    return switch (key.band()) {
      case UV_355 -> "UV, " + light + regime;
      case BLUE -> "Diode, " + light + regime;
      case GREEN_532 -> "Green, " + light + regime;
      case NEAR_INFRARED -> "Fibre or infrared, " + light + regime;
      case CO2_10600 -> "CO2, " + light + regime;
      case OTHER -> light + regime;
    };
  }
}
