package club.emberwell.web.dose;

import club.emberwell.bench.Machine;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
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
import java.util.stream.Stream;

/** The fields of the dose calculator; the address holds them all. */
final class DoseForm {
  /** Fields that say that somebody wants an answer. */
  static final List<String> ASKING = List.of("settings.power", "settings.speed");

  private static final int QUANTITY_LENGTH = 64;

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
        Field.of("process", "What is done")
            .options(Stream.of(Process.values()).map(p -> option(p.code(), p.label())).toList())
            .value(Process.SURFACE_ENGRAVING.code())
            .required());
    IN_DOSE.forEach(setting -> form.add(SettingFields.field(setting)));
    form.field("settings.lineSpacing")
        .hint(Setting.LINE_SPACING.form().example() + "; needed for area work");
    form.field("settings.crossPass").value("false");
    form.add(quantity("other.power", "Other power", "30 % or 6 W; empty = the same"));
    form.add(quantity("other.lineSpacing", "Other line spacing", "0.08 mm; empty = the same"));
    values.forEach((name, value) -> form.find(name).ifPresent(field -> field.value(value)));
    return form;
  }

  private static void laser(Form form) {
    form.add(
        Field.of("laser.source", "Laser source")
            .options(Stream.of(LaserSource.values()).map(s -> option(s.code(), s.label())).toList())
            .value(LaserSource.CO2.code())
            .required());
    form.add(
        quantity("laser.wavelength", "Wavelength", UsualWavelength.sentence())
            .list("wavelengths")
            .required());
    form.add(quantity("laser.ratedPower", "Rated power", "Optical power, 20 W").required());
    form.add(
        Field.of("laser.motion", "How the beam moves")
            .options(Stream.of(Motion.values()).map(m -> option(m.code(), m.label())).toList())
            .value(Motion.GANTRY.code())
            .required());
    form.add(
        Field.of("laser.regime", "Light comes")
            .options(
                Stream.concat(
                        Stream.of(option("", "as usual for the source")),
                        Stream.of(Regime.values()).map(r -> option(r.code(), r.label())))
                    .toList()));
    form.add(
        quantity("laser.beamDiameter", "Beam diameter at focus", "80 um; for overlap and fluence"));
  }

  private static Field quantity(String name, String label, String hint) {
    return Field.of(name, label).hint(hint).numeric().maxLength(QUANTITY_LENGTH);
  }

  private static Option option(String value, String label) {
    return new Option(value, label, false);
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
