package club.emberwell.web.eyewear;

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

  /** Minima, then distances, as far as there are numbers. */
  static List<Worked> of(EyeProtection eyes, NumberStyle style) {
    EyeWork work = new EyeWork(eyes, style);
    EyeMinima minima = eyes.minima();
    if (minima.limit() != null) {
      work.limit(minima.limit());
      work.density(minima.average());
    }
    minima.scales().forEach((letter, scale) -> work.scale(letter, scale));
    eyes.reaches().stream().filter(reach -> reach.distance() != null).forEach(work::reach);
    return List.copyOf(work.worked);
  }

  /** What would be needed for the rest, each a sentence. */
  static List<String> missing(EyeProtection eyes) {
    List<String> lines = new ArrayList<>();
    EyeMinima minima = eyes.minima();
    if (minima.limit() == null) {
      lines.add("The tables read here give no limit for this wavelength: there is no number.");
    } else if (minima.density() == null) {
      lines.add(
          "This laser is pulsed. What its pulses need depends on frequency and pulse duration, so"
              + " there is no number for them here: the calculator takes both.");
    }
    if (!minima.scaled()) {
      lines.add("A scale number (LB) needs the diameter of the beam before the lens.");
    }
    eyes.reaches().stream()
        .filter(reach -> reach.missing() != null)
        .map(reach -> reach.way().label() + ": no number. " + reach.missing())
        .forEach(lines::add);
    return lines;
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
    String formula =
        switch (reach.way()) {
          case DIRECT -> "(√(8 P / (π limit)) − a) / φ";
          case LENS -> "(f / b) √(8 P / (π limit)), b as 1/e² value";
          case DIFFUSE -> "√(ρ P / (π limit)), ρ = 1";
        };
    worked.add(
        new Worked(
            reach.way().label() + ", as far as",
            number(Upward.distance(reach.distance().metres())) + " m",
            formula,
            HazardDistance.SOURCE,
            reach.distance().assumptions()));
  }

  private String number(double value) {
    return QuantityPrinter.number(value, style);
  }
}
