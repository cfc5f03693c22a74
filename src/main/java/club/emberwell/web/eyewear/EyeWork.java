package club.emberwell.web.eyewear;

import club.emberwell.bench.Machine;
import club.emberwell.eyewear.EyeProtection;
import club.emberwell.laser.safety.En207;
import club.emberwell.laser.safety.EyeLimits;
import club.emberwell.laser.safety.EyeMinima;
import club.emberwell.laser.safety.Eyewear;
import club.emberwell.laser.safety.HazardDistance;
import club.emberwell.laser.safety.Upward;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.web.dose.Worked;
import java.util.ArrayList;
import java.util.List;

/** The numbers behind a machine's eye protection, each with its formula, source and assumptions. */
final class EyeWork {
  private final EyeProtection eyes;
  private final NumberStyle style;
  private final List<Worked> worked = new ArrayList<>();

  private EyeWork(EyeProtection eyes, NumberStyle style) {
    this.eyes = eyes;
    this.style = style;
  }

  /**
   * What is calculated for one machine.
   *
   * @param distances at which each way of the beam is still too strong
   */
  record Numbers(List<Worked> minima, List<Worked> distances, List<Missing> missing) {}

  /**
   * What there is no number of.
   *
   * @param line a sentence
   * @param field of the machine's form that would give it, or null
   */
  record Missing(String line, String field) {}

  static Numbers of(EyeProtection eyes, NumberStyle style) {
    return new Numbers(minima(eyes, style), distances(eyes, style), missing(eyes));
  }

  private static List<Worked> minima(EyeProtection eyes, NumberStyle style) {
    EyeWork work = new EyeWork(eyes, style);
    EyeMinima minima = eyes.minima();
    if (minima.limit() != null) {
      work.limit(minima.limit());
      work.density(minima.average());
    }
    minima.scales().forEach((letter, scale) -> work.scale(letter, scale));
    return List.copyOf(work.worked);
  }

  private static List<Worked> distances(EyeProtection eyes, NumberStyle style) {
    EyeWork work = new EyeWork(eyes, style);
    eyes.reaches().stream().filter(reach -> reach.distance() != null).forEach(work::reach);
    return List.copyOf(work.worked);
  }

  private static List<Missing> missing(EyeProtection eyes) {
    List<Missing> lines = new ArrayList<>();
    EyeMinima minima = eyes.minima();
    if (minima.limit() == null) {
      lines.add(
          new Missing(
              "The tables read here give no limit for this wavelength: there is no number.", null));
    } else if (minima.density() == null) {
      lines.add(
          new Missing(
              "This laser is pulsed. What its pulses need depends on frequency and pulse duration,"
                  + " so there is no number for them here: the calculator takes both.",
              null));
    }
    if (!minima.scaled()) {
      lines.add(
          new Missing("A scale number (LB) needs the diameter of the beam before the lens.", null));
    }
    eyes.reaches().stream()
        .filter(reach -> reach.missing() != null)
        .map(EyeWork::missing)
        .forEach(lines::add);
    return lines;
  }

  private static Missing missing(EyeProtection.Reach reach) {
    return new Missing(
        reach.way().label() + ": no number. " + reach.missing(),
        reach.way() == EyeProtection.Way.DIRECT ? "divergence" : null);
  }

  private void limit(EyeLimits.Limit limit) {
    worked.add(
        new Worked(
            "Limit, look of " + number(limit.seconds()) + " s",
            number(limit.irradiance()) + " W/m²",
            "%s, measured over %s mm".formatted(limit.rule(), number(limit.apertureMm())),
            EyeLimits.SOURCE,
            limit.assumptions()));
  }

  private void density(Eyewear.Density average) {
    List<String> notes = new ArrayList<>(average.assumptions());
    notes.add("The beam counts as narrower than the aperture, wherever an eye is.");
    if (eyes.machine().laser().gated()) {
      notes.add("Power that is pulsed (PWM) counts as continuous at full power.");
    }
    worked.add(
        new Worked(
            eyes.minima().beam().pulsed()
                ? "Optical density for the average power alone, at least"
                : "Optical density, at least",
            "OD " + number(Upward.density(average.opticalDensity())),
            "D = log10(E / limit), E = %s W/m²; rounded up".formatted(number(average.irradiance())),
            EyeLimits.SOURCE,
            notes));
  }

  private void scale(En207.Condition letter, En207.Scale scale) {
    List<String> notes = new ArrayList<>(scale.assumptions());
    notes.add(
        "The beam at the eyewear counts as wide as before the lens; nearer the focus it is not.");
    worked.add(
        new Worked(
            "Scale number for %s (%s), at least".formatted(letter, letter.label()),
            scale.marking(),
            "rounded up from " + number(scale.exact()),
            En207.SOURCE,
            notes));
  }

  private void reach(EyeProtection.Reach reach) {
    String inputs = reach.way() == EyeProtection.Way.DIRECT ? straight(eyes.machine()) : "";
    worked.add(
        new Worked(
            reach.way().label(),
            number(Upward.distance(reach.distance().metres())) + " m",
            reach.distance().formula() + inputs,
            HazardDistance.SOURCE,
            reach.distance().assumptions()));
  }

  private String straight(Machine machine) {
    Double beam = machine.inputBeamMm();
    return "; φ = %s mrad".formatted(number(machine.divergenceMrad()))
        + (beam == null ? "" : ", a = %s mm".formatted(number(beam)));
  }

  private String number(double value) {
    return QuantityPrinter.number(value, style);
  }
}
