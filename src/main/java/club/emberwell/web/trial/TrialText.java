package club.emberwell.web.trial;

import club.emberwell.laser.Derived;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.TrialSnapshot;
import java.util.ArrayList;
import java.util.List;

/** Settings, doses and lasers in a line of words, in the reader's units. */
public final class TrialText {
  private TrialText() {}

  /** Settings that were computed, not tried. */
  public static String plain(Settings s, UnitPreferences reader) {
    List<String> parts = new ArrayList<>();
    add(parts, s.powerPercent(), QuantityKind.POWER_PERCENT, reader);
    add(parts, s.powerW(), QuantityKind.POWER, reader);
    add(parts, s.speedMmS(), QuantityKind.SPEED, reader);
    add(parts, s.lineSpacingMm(), QuantityKind.LINE_SPACING, reader);
    if (s.passes() != null && s.passes() > 1) {
      parts.add(s.passes() + " passes");
    }
    return String.join(" · ", parts);
  }

  /** "45 % (9 W) · 304.8 mm/s · 0.1 mm · 2 passes". */
  public static String settings(TrialSnapshot trial, UnitPreferences reader) {
    Settings s = trial.settings();
    List<String> parts = new ArrayList<>();
    parts.add(power(s, trial.derived(), reader));
    add(parts, s.speedMmS(), QuantityKind.SPEED, reader);
    add(parts, s.lineSpacingMm(), QuantityKind.LINE_SPACING, reader);
    if (s.passes() != null && s.passes() > 1) {
      parts.add(s.passes() + " passes");
    }
    add(parts, s.repetitionRateKhz(), QuantityKind.REPETITION_RATE, reader);
    add(parts, s.pulseDurationNs(), QuantityKind.PULSE_DURATION, reader);
    if (Boolean.TRUE.equals(s.crossPass())) {
      parts.add("cross pass");
    }
    if (s.airAssist() != null) {
      parts.add(s.airAssist() ? "air assist" : "no air assist");
    }
    parts.removeIf(String::isEmpty);
    return String.join(" · ", parts);
  }

  private static String power(Settings s, Derived d, UnitPreferences reader) {
    String watts =
        d.averagePowerW() == null
            ? ""
            : QuantityPrinter.print(d.averagePowerW(), QuantityKind.POWER, reader);
    if (s.powerPercent() == null) {
      return watts;
    }
    String percent = QuantityPrinter.print(s.powerPercent(), QuantityKind.POWER_PERCENT, reader);
    return watts.isEmpty() ? percent : percent + " (" + watts + ")";
  }

  private static void add(
      List<String> parts, Double value, QuantityKind dimension, UnitPreferences reader) {
    if (value != null) {
      parts.add(QuantityPrinter.print(value, dimension, reader));
    }
  }

  /** "nominal 0.9 J/mm²", or empty where an input is missing. */
  public static String dose(TrialSnapshot trial, UnitPreferences reader) {
    Derived d = trial.derived();
    if (d.arealDose() != null) {
      return "nominal " + QuantityPrinter.print(d.arealDose(), QuantityKind.AREAL_DOSE, reader);
    }
    if (d.lineDose() != null) {
      return "nominal " + QuantityPrinter.print(d.lineDose(), QuantityKind.LINE_DOSE, reader);
    }
    return "";
  }

  /** "10 W diode 455 nm, gantry". */
  public static String laser(Laser laser, UnitPreferences reader) {
    return QuantityPrinter.print(laser.ratedPowerW(), QuantityKind.POWER, reader)
        + " "
        + laser
            .source()
            .label()
            .toLowerCase(java.util.Locale.ROOT)
            .replace("co2", "CO2")
            .replace("uv", "UV")
        + " "
        + QuantityPrinter.print(laser.wavelengthNm(), QuantityKind.WAVELENGTH, reader)
        + ", "
        + laser.motion().label().toLowerCase(java.util.Locale.ROOT);
  }

  /** Style class of an effect's tag. */
  public static String effectClass(Effect effect) {
    return switch (effect) {
      case TOO_LITTLE -> "tag-little";
      case RIGHT -> "tag-right";
      case TOO_MUCH -> "tag-much";
    };
  }
}
