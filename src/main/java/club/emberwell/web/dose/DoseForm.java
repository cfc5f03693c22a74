package club.emberwell.web.dose;

import club.emberwell.bench.Machine;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.report.WrittenLaser;
import club.emberwell.report.WrittenSettings;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.frame.UsualWavelength;
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
  private static final int COUNT_LENGTH = 5;

  private DoseForm() {}

  static Form of(Map<String, String> values) {
    Form form = new Form();
    laser(form);
    form.add(
        Field.of("process", "What is done")
            .options(Stream.of(Process.values()).map(p -> option(p.code(), p.label())).toList())
            .value(Process.SURFACE_ENGRAVING.code())
            .required());
    form.add(quantity("settings.power", "Power", "45 % or 9 W").required());
    form.add(quantity("settings.speed", "Speed", "3000 mm/min, 50 mm/s, 12 in/s").required());
    form.add(
        quantity("settings.lineSpacing", "Line spacing", "0.1 mm, 254 dpi; needed for area work"));
    form.add(Field.of("settings.passes", "Passes").inputMode("numeric").maxLength(COUNT_LENGTH));
    form.add(
        Field.of("settings.crossPass", "Second fill across the first")
            .options(List.of(option("false", "no"), option("true", "yes")))
            .value("false"));
    form.add(quantity("settings.repetitionRate", "Pulse repetition rate", "30 kHz"));
    form.add(quantity("settings.pulseDuration", "Pulse duration", "200 ns"));
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

  static WrittenLaser laser(SentForm sent) {
    return new WrittenLaser(
        sent.text("laser.source"),
        sent.quantity("laser.wavelength"),
        sent.quantity("laser.ratedPower"),
        sent.text("laser.motion"),
        sent.text("laser.regime"),
        null,
        sent.quantity("laser.beamDiameter"));
  }

  static WrittenSettings settings(SentForm sent) {
    return new WrittenSettings(
        sent.quantity("settings.power"),
        sent.quantity("settings.speed"),
        sent.quantity("settings.lineSpacing"),
        sent.number("settings.passes"),
        sent.quantity("settings.repetitionRate"),
        sent.quantity("settings.pulseDuration"),
        null,
        null,
        null,
        sent.flag("settings.crossPass"));
  }

  /** Address of the calculator with a machine filled in. */
  static String withMachine(Machine machine) {
    WrittenMachine w = machine.written();
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
