package club.emberwell.web.dose;

import club.emberwell.bench.Machine;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.frame.UsualWavelength;
import club.emberwell.web.report.SettingFields;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The fields of the dose calculator; the address holds them all. */
final class DoseForm {
  /** Fields that say that somebody wants an answer. */
  static final List<String> ASKING = List.of("settings.power", "settings.speed");

  /** The settings that stand in the formulas. */
  private static final List<Setting> IN_DOSE =
      List.of(
          Setting.POWER,
          Setting.SPEED,
          Setting.LINE_SPACING,
          Setting.PASSES,
          Setting.CROSS_PASS,
          Setting.REPETITION_RATE,
          Setting.PULSE_DURATION);

  private DoseForm() {}

  static Form of(Map<String, String> values) {
    Form form = new Form();
    laser(form);
    form.add(
        Field.of("process", "What you do")
            .choices(Process.values(), Process::label)
            .value(Process.SURFACE_ENGRAVING.code())
            .required());
    IN_DOSE.forEach(setting -> form.add(SettingFields.field(setting)));
    form.field("settings.lineSpacing")
        .hint(Setting.LINE_SPACING.form().example() + "; needed for area work");
    form.field("settings.crossPass").value("false");
    form.add(Field.quantity("other.power", "Other power", "30 % or 6 W; empty = the same"));
    form.add(
        Field.quantity("other.lineSpacing", "Other line spacing", "0.08 mm; empty = the same"));
    return form.fill(values);
  }

  private static void laser(Form form) {
    form.add(
        Field.of("laser.source", "Type of laser")
            .choices(LaserSource.values(), LaserSource::label)
            .value(LaserSource.CO2.code())
            .required());
    form.add(
        Field.quantity("laser.wavelength", "Wavelength", UsualWavelength.sentence())
            .list("wavelengths")
            .required());
    form.add(Field.quantity("laser.ratedPower", "Rated power", "Optical power, 20 W").required());
    form.add(
        Field.of("laser.motion", "Motion")
            .choices(Motion.values(), Motion::label)
            .value(Motion.GANTRY.code())
            .required());
    form.add(
        Field.of("laser.regime", "Type of beam")
            .choice("", "as usual for this laser")
            .choices(Regime.values(), Regime::label));
    form.add(
        Field.quantity(
            "laser.beamDiameter",
            "Spot size at focus",
            "80 µm; also called beam diameter. For overlap and fluence"));
  }

  /** Address of the calculator with a machine filled in. */
  static String withMachine(Machine machine) {
    WrittenLaser w = machine.written().laser();
    Map<String, String> values = new LinkedHashMap<>();
    values.put("laser.source", machine.laser().source().code());
    values.put("laser.wavelength", SentForm.typed(w.wavelength()));
    values.put("laser.ratedPower", SentForm.typed(w.ratedPower()));
    values.put("laser.motion", machine.laser().motion().code());
    values.put("laser.regime", machine.laser().regime().code());
    values.put("laser.beamDiameter", SentForm.typed(w.beamDiameter()));
    return values.entrySet().stream()
        .filter(e -> !e.getValue().isEmpty())
        .map(e -> e.getKey() + "=" + URLEncoder.encode(e.getValue(), StandardCharsets.UTF_8))
        .collect(Collectors.joining("&", "/dose?", ""));
  }
}
