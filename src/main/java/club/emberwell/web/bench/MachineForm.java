package club.emberwell.web.bench;

import club.emberwell.bench.Housing;
import club.emberwell.bench.MachineLimits;
import club.emberwell.bench.PulseControl;
import club.emberwell.bench.WrittenLaser;
import club.emberwell.bench.WrittenMachine;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.frame.UsualWavelength;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** The fields of a machine, from and to what its owner wrote. */
public final class MachineForm {
  private static final String UNSAID = "not given";

  private MachineForm() {}

  static Form blank() {
    Form form = new Form().atField();
    form.add(
        Field.of("name", "Name")
            .hint("Your name for it. Your reports show it beside the laser.")
            .maxLength(MachineLimits.NAME)
            .required());
    form.add(
        Field.of("source", "Type of laser")
            .choices(LaserSource.values(), LaserSource::label)
            .required());
    form.add(
        Field.quantity(
                "ratedPower",
                "Optical power (rated)",
                "The power of the light, such as 10 W; not the electrical power.")
            .required());
    form.add(
        Field.of("motion", "Motion")
            .choice(Motion.GANTRY.code(), "Gantry (the head travels)")
            .choice(Motion.GALVO.code(), "Galvo (mirrors turn)")
            .required());
    form.add(
        Field.of("housing", "Housing")
            .hint("Decides what we warn of beside your glasses.")
            .choice("", UNSAID)
            .choices(Housing.values(), Housing::label)
            .folded());
    form.add(
        Field.quantity(
            "divergence",
            "Divergence (full angle, 1/e²)",
            "As on its data sheet, such as 2 mrad. Tells beside your glasses how far the straight"
                + " beam is too strong."));
    form.add(
        Field.quantity(
                "wavelength",
                "Wavelength",
                "From its label. If empty, the usual one. " + UsualWavelength.sentence())
            .list("wavelengths"));
    pulses(form);
    lens(form);
    form.add(Field.quantity("maxSpeed", "Maximum speed", "600 mm/s, 36000 mm/min"));
    form.add(
        Field.of("model", "Model")
            .hint("The maker's name for it. Others can search for the same model.")
            .list("models")
            .maxLength(MachineLimits.MODEL));
    form.add(
        Field.of("controllerVersion", "Firmware or software version")
            .maxLength(MachineLimits.CONTROLLER_VERSION));
    return form;
  }

  private static void lens(Form form) {
    form.add(
        Field.of(UsualLens.FIELD, "Lens and spot size, calculated")
            .choice("", "As typed below")
            .choices(UsualLens.all(), UsualLens::code, UsualLens::label)
            .aside());
    form.add(Field.quantity("lens", "Lens (focal length)", "50 mm, 2 in"));
    form.add(
        Field.quantity(
            "inputBeam",
            "Beam before the lens",
            "Its diameter, such as 5 mm. With the lens it gives the spot size."));
    form.add(
        Field.quantity(
            "beamDiameter",
            "Spot size at focus, if you measured it",
            "80 µm, 0.08 mm; also called beam diameter. Gives better estimates"));
  }

  private static void pulses(Form form) {
    form.add(
        Field.of("regime", "Type of beam")
            .hint("Continuous or pulsed. If empty, the usual one of your type of laser.")
            .choice("", UNSAID)
            .choices(Regime.values(), Regime::label));
    form.add(
        Field.of("gated", "Power is pulsed (PWM)")
            .choice("", UNSAID)
            .choice("true", "yes")
            .choice("false", "no"));
    form.add(
        Field.of("pulseControl", "Pulse duration (pulsed lasers)")
            .choice("", UNSAID)
            .choices(PulseControl.values(), PulseControl::label));
  }

  static WrittenMachine written(SentForm sent) {
    return new WrittenMachine(
        sent.text("name"),
        sent.text("model"),
        UsualLens.chosen(laser(sent, ""), sent.text(UsualLens.FIELD)),
        sent.flag("gated"),
        sent.text("pulseControl"),
        sent.quantity("maxSpeed"),
        new WrittenMachine.Built(
            sent.text("controllerVersion"), sent.text("housing"), sent.quantity("divergence")),
        sent.confirmed());
  }

  /** A laser as sent, in fields with this prefix; what a form does not ask is not given. */
  public static WrittenLaser laser(SentForm sent, String prefix) {
    return new WrittenLaser(
        sent.text(prefix + "source"),
        sent.quantity(prefix + "wavelength"),
        sent.quantity(prefix + "ratedPower"),
        sent.text(prefix + "motion"),
        sent.text(prefix + "regime"),
        sent.quantity(prefix + "lens"),
        sent.quantity(prefix + "beamDiameter"),
        sent.quantity(prefix + "inputBeam"));
  }

  /** What was written, by field name. */
  static Map<String, String> values(WrittenMachine w) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("name", w.name());
    values.put("model", w.model() == null ? "" : w.model());
    values.put("source", word(LaserSource.of(w.laser().source()).map(LaserSource::code)));
    values.put("wavelength", SentForm.typed(w.laser().wavelength()));
    values.put("ratedPower", SentForm.typed(w.laser().ratedPower()));
    values.put("motion", word(Motion.of(w.laser().motion()).map(Motion::code)));
    values.put("regime", word(Regime.of(w.laser().regime()).map(Regime::code)));
    values.put("gated", w.gated() == null ? "" : w.gated().toString());
    values.put("pulseControl", w.pulseControl() == null ? "" : w.pulseControl());
    values.put("lens", SentForm.typed(w.laser().lens()));
    values.put("inputBeam", SentForm.typed(w.laser().inputBeam()));
    values.put("beamDiameter", SentForm.typed(w.laser().beamDiameter()));
    values.put("maxSpeed", SentForm.typed(w.maxSpeed()));
    values.put("controllerVersion", Objects.toString(w.built().controllerVersion(), ""));
    values.put("housing", Objects.toString(w.built().housing(), ""));
    values.put("divergence", SentForm.typed(w.built().divergence()));
    return values;
  }

  private static String word(Optional<String> code) {
    return code.orElse("");
  }
}
