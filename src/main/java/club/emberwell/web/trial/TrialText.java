package club.emberwell.web.trial;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Derived;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.reading.TrialSnapshot;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Settings, doses and lasers in a line of words, in the reader's units. */
public final class TrialText {
  private TrialText() {}

  /** Settings that were computed, not tried. */
  public static String plain(Settings s, UnitPreferences reader) {
    return line(Stream.of(Setting.values()).map(setting -> words(s, setting, reader)));
  }

  /** "45 % (9 W) · 304.8 mm/s · 0.1 mm · 2 passes". */
  public static String settings(TrialSnapshot trial, UnitPreferences reader) {
    Settings s = trial.settings();
    return line(
        Stream.of(Setting.values())
            .map(
                setting ->
                    setting == Setting.POWER
                        ? power(s, trial.derived(), reader)
                        : words(s, setting, reader)));
  }

  private static String line(Stream<String> parts) {
    return parts.filter(part -> !part.isEmpty()).collect(Collectors.joining(" · "));
  }

  /** One setting in a line about all; empty where it is not worth a mention. */
  private static String words(Settings s, Setting setting, UnitPreferences reader) {
    Object value = s.values().get(setting);
    if (value == null || !setting.form().inLine()) {
      return "";
    }
    if (value instanceof Amount amount) {
      return QuantityPrinter.print(amount.number(), amount.kind(), reader);
    }
    if (value instanceof Integer count) {
      return count > 1 ? count + " " + setting.label().toLowerCase(Locale.ROOT) : "";
    }
    return setting.value().choice(value).map(Choice::inLine).orElse("");
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

  /** "nominal 0.9 J/mm²", or empty where an input is missing. */
  public static String dose(TrialSnapshot trial, UnitPreferences reader) {
    String dose = shortDose(trial.derived(), reader);
    return dose.isEmpty() ? "" : "nominal " + dose;
  }

  /** "10 W diode 455 nm, gantry". */
  public static String laser(Laser laser, UnitPreferences reader) {
    return QuantityPrinter.print(laser.ratedPowerW(), QuantityKind.POWER, reader)
        + " "
        + laser.source().label().toLowerCase(Locale.ROOT).replace("co2", "CO2").replace("uv", "UV")
        + " "
        + QuantityPrinter.print(laser.wavelengthNm(), QuantityKind.WAVELENGTH, reader)
        + ", "
        + laser.motion().label().toLowerCase(Locale.ROOT);
  }

  /** "0.9 J/mm²" for where many stand side by side, or empty where an input is missing. */
  public static String shortDose(Derived d, UnitPreferences reader) {
    if (d.arealDose() != null) {
      return QuantityPrinter.print(d.arealDose(), QuantityKind.AREAL_DOSE, reader);
    }
    return d.lineDose() == null
        ? ""
        : QuantityPrinter.print(d.lineDose(), QuantityKind.LINE_DOSE, reader);
  }

  /** What went wrong, in words. */
  public static List<String> defects(TrialSnapshot trial, Vocabulary vocabulary) {
    return trial.defects().stream()
        .map(slug -> vocabulary.term(TermKind.DEFECT, slug).map(Term::label).orElse(slug))
        .toList();
  }

  /** A shape that tells effects apart without colour. */
  public static String shape(Effect effect) {
    return switch (effect) {
      case TOO_LITTLE -> "▽";
      case RIGHT -> "●";
      case TOO_MUCH -> "△";
    };
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
