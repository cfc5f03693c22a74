package club.emberwell.laser.dose;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Pulse;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import java.util.ArrayList;
import java.util.List;

/**
 * Settings of one machine scaled to another by equal nominal dose, v2 = v1 (P2/P1)(h1/h2)(n2/n1),
 * before anyone judged whether that may be shown.
 *
 * @param planned what the other machine would be set to, gaps filled; its speed only where the
 *     reader stated one
 * @param start the same with the scaled speed, within the machine's limits; null where the dose is
 *     not known
 */
record Scaled(Transfer.Question asked, Settings planned, Settings start, String limited) {

  static Scaled of(Transfer.Question asked) {
    Settings planned = filled(asked);
    Derived before = Dose.derive(asked.from(), asked.process(), asked.used());
    DoseKind kind = asked.process().doseKind();
    Double dose = before.dose(kind);
    Double power = planned.powerW();
    Double runs = Dose.runs(asked.process(), planned);
    Double unused = Double.NaN;
    Double spacing = kind == DoseKind.AREAL ? Dose.positive(planned.lineSpacingMm()) : unused;
    if (dose == null
        || dose == 0
        || power == null
        || power == 0
        || runs == null
        || spacing == null) {
      return new Scaled(asked, planned, null, null);
    }
    double speed = IsoDose.speedFor(kind, dose, power, spacing, runs);
    Double top = asked.to().maxSpeedMmS();
    if (top != null && speed > top) {
      double lower = IsoDose.powerFor(kind, dose, top, spacing, runs);
      return new Scaled(
          asked,
          planned,
          set(planned, lower, top),
          "The power is lowered because the machine does not run faster.");
    }
    return new Scaled(asked, planned, set(planned, power, speed), null);
  }

  private static Settings filled(Transfer.Question asked) {
    Settings used = asked.used();
    Settings plan = asked.planned() == null ? used : asked.planned();
    Double power = asked.planned() == null ? null : Dose.averagePower(asked.to(), plan);
    Double watts = power == null ? Dose.averagePower(asked.from(), used) : power;
    double rated = asked.to().ratedPowerW();
    return plan.or(used)
        .with(Setting.SPEED, asked.planned() == null ? null : plan.speedMmS())
        .atWatts(watts == null ? null : Double.valueOf(rated > 0 ? Math.min(watts, rated) : watts));
  }

  private static Settings set(Settings s, double powerW, double speedMmS) {
    return s.atWatts(powerW).with(Setting.SPEED, speedMmS);
  }

  boolean ratiosWithin(double factor) {
    return power().within(factor) && speed().within(factor);
  }

  /** Peak fluence, pulses per place and pulse duration at equal dose: what must match first. */
  List<Comparison> pulseQuantities() {
    return pulseQuantities(start);
  }

  private List<Comparison> pulseQuantities(Settings set) {
    Derived from = before();
    Derived to = Dose.derive(asked.to(), asked.process(), set);
    boolean area = asked.process().doseKind() == DoseKind.AREAL;
    return List.of(
        new Comparison("peak fluence", "J/cm2", from.peakFluence(), to.peakFluence()),
        area
            ? new Comparison(
                "effective pulses per place",
                "",
                from.of(DoseFormula.PULSES_PER_AREA),
                to.of(DoseFormula.PULSES_PER_AREA))
            : new Comparison(
                "pulses per spot",
                "",
                from.of(DoseFormula.PULSES_PER_SPOT),
                to.of(DoseFormula.PULSES_PER_SPOT)),
        new Comparison(
            "pulse duration", "ns", asked.used().pulseDurationNs(), set.pulseDurationNs()));
  }

  Transfer.Outcome without(Transfer.Verdict verdict, String reason) {
    return new Transfer.Outcome(verdict, List.of(reason), null, sideBySide(planned));
  }

  Transfer.Outcome with(Transfer.Verdict verdict, List<String> reasons) {
    List<String> all = new ArrayList<>(reasons);
    if (limited != null) {
      all.add(limited);
    }
    return new Transfer.Outcome(verdict, all, start, sideBySide(start));
  }

  /** What was used beside what is or would be set; without a speed nothing follows from one. */
  private List<Comparison> sideBySide(Settings set) {
    Derived from = before();
    Derived to = Dose.derive(asked.to(), asked.process(), set);
    List<Comparison> list = new ArrayList<>();
    list.add(new Comparison("average power", "W", from.averagePowerW(), to.averagePowerW()));
    list.add(new Comparison("speed", "mm/s", asked.used().speedMmS(), set.speedMmS()));
    list.add(
        asked.process().doseKind() == DoseKind.AREAL
            ? new Comparison(
                "energy per area (dose, nominal)", "J/mm2", from.arealDose(), to.arealDose())
            : new Comparison(
                "energy per length (line dose, nominal)", "J/mm", from.lineDose(), to.lineDose()));
    list.add(
        new Comparison(
            "beam diameter at focus",
            "um",
            asked.from().beamDiameterUm(),
            asked.to().beamDiameterUm()));
    list.add(
        new Comparison(
            "irradiance on the axis",
            "W/cm2",
            irradiance(asked.from(), asked.used()),
            irradiance(asked.to(), set)));
    if (pulsed(asked.from()) || pulsed(asked.to())) {
      list.addAll(pulseQuantities(set));
      list.add(
          new Comparison(
              "pulse overlap",
              "",
              from.of(DoseFormula.PULSE_OVERLAP),
              to.of(DoseFormula.PULSE_OVERLAP)));
    }
    return list;
  }

  private static boolean pulsed(Laser laser) {
    return laser.regime() != null && laser.regime().pulsed();
  }

  private Comparison power() {
    return new Comparison("", "W", before().averagePowerW(), start.powerW());
  }

  private Comparison speed() {
    return new Comparison("", "mm/s", asked.used().speedMmS(), start.speedMmS());
  }

  private Derived before() {
    return Dose.derive(asked.from(), asked.process(), asked.used());
  }

  private static Double irradiance(Laser laser, Settings settings) {
    Double power = Dose.averagePower(laser, settings);
    Double diameter = Dose.positive(laser.beamDiameterUm());
    return power == null || diameter == null
        ? null
        : Double.valueOf(Pulse.peakIrradiance(power, diameter));
  }
}
