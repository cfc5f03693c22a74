package club.emberwell.web.dose;

import club.emberwell.laser.Regime;
import club.emberwell.laser.safety.En207;
import club.emberwell.laser.safety.EyeLimits;
import club.emberwell.laser.safety.EyeLimits.Edition;
import club.emberwell.laser.safety.EyeLimits.Limit;
import club.emberwell.laser.safety.Eyewear;
import club.emberwell.laser.safety.HazardDistance;
import club.emberwell.laser.safety.HazardDistance.Edge;
import club.emberwell.laser.safety.Upward;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.web.dose.EyesView.Beam;
import club.emberwell.web.dose.EyesView.Pulses;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Works out eyewear minima and hazard distances from what was stated. */
final class EyeAnswer {
  private final Beam beam;
  private final NumberStyle style;
  private final List<Worked> eyewear = new ArrayList<>();
  private final List<Worked> distances = new ArrayList<>();
  private final List<String> missing = new ArrayList<>();

  private EyeAnswer(Beam beam, NumberStyle style) {
    this.beam = beam;
    this.style = style;
  }

  static EyeAnswer of(Beam beam, NumberStyle style) {
    EyeAnswer answer = new EyeAnswer(beam, style);
    Optional<Limit> limit = EyeLimits.limit(beam.nm(), EyeLimits.accidentalSeconds(beam.nm()));
    if (limit.isEmpty()) {
      answer.missing.add(
          "The tables we read give no limit for this wavelength, so we cannot calculate protection"
              + " or distances. Ask a laser safety officer.");
    } else {
      answer.densities(limit.get());
      answer.distances(limit.get());
    }
    answer.scales();
    return answer;
  }

  List<Worked> eyewear() {
    return List.copyOf(eyewear);
  }

  List<Worked> distances() {
    return List.copyOf(distances);
  }

  List<String> missing() {
    return List.copyOf(missing);
  }

  private void densities(Limit limit) {
    eyewear.add(
        new Worked(
            "Limit for an accidental look of " + number(limit.seconds()) + " s",
            number(limit.irradiance()) + " W/m²",
            limit.rule() + ", measured over " + number(limit.apertureMm()) + " mm",
            EyeLimits.SOURCE,
            limit.assumptions()));
    Eyewear.density(beam.nm(), beam.powerW(), limit.seconds(), beam.beamMm())
        .ifPresent(
            density ->
                eyewear.add(
                    new Worked(
                        "Optical density for the average power, at least",
                        "OD " + upward(density.opticalDensity()),
                        "D = log10(E / limit), E = " + number(density.irradiance()) + " W/m²",
                        EyeLimits.SOURCE,
                        density.assumptions())));
    if (beam.pulses().stated()) {
      train(limit.seconds());
    }
  }

  /** The stricter of both editions, with what each of them says. */
  private void train(double seconds) {
    Optional<Eyewear.PulsedDensity> newer = pulsed(seconds, Edition.ICNIRP_2013);
    Optional<Eyewear.PulsedDensity> directive = pulsed(seconds, Edition.DIRECTIVE_2006_25);
    if (newer.isEmpty() && directive.isEmpty()) {
      missing.add("The tables we read give no limit for pulses of this duration.");
      return;
    }
    double both = Math.max(required(newer), required(directive));
    List<String> notes = new ArrayList<>();
    notes.add(
        required(newer) >= required(directive)
            ? "The stricter of two editions: ICNIRP 2013 with IEC 60825-1:2014."
            : "The stricter of two editions: Directive 2006/25/EC.");
    newer.ifPresent(d -> notes.addAll(d.assumptions()));
    directive.ifPresent(d -> notes.addAll(d.assumptions()));
    eyewear.add(
        new Worked(
            "Optical density for the pulse train, at least",
            "OD " + upward(both),
            "ICNIRP 2013: " + rules(newer) + ". Directive: " + rules(directive),
            EyeLimits.SOURCE,
            notes.stream().distinct().toList()));
  }

  private Optional<Eyewear.PulsedDensity> pulsed(double seconds, Edition edition) {
    Pulses pulses = beam.pulses();
    return Eyewear.pulsed(
        beam.nm(), energyMj(), pulses.durationNs(), pulses.rateKhz(), seconds, edition);
  }

  private static double required(Optional<Eyewear.PulsedDensity> density) {
    return density.map(Eyewear.PulsedDensity::required).orElse(0.0);
  }

  private String rules(Optional<Eyewear.PulsedDensity> density) {
    return density
        .map(
            d ->
                "one pulse %s, average %s, many pulses %s"
                    .formatted(upward(d.singlePulse()), upward(d.average()), upward(d.additive())))
        .orElse("no limit for such pulses");
  }

  private double energyMj() {
    return beam.powerW() / beam.pulses().rateKhz();
  }

  private void scales() {
    if (beam.beamMm() == null) {
      missing.add("Enter the beam diameter at the eye to get a scale number (LB).");
      return;
    }
    scale(
        "Scale number for the average power, at least",
        En207.continuous(beam.nm(), beam.powerW(), beam.beamMm()));
    Pulses pulses = beam.pulses();
    if (pulses.stated() && Regime.ofPulseDuration(pulses.durationNs()) != Regime.CW) {
      scale(
          En207.needsTrain(beam.nm())
              ? "Scale number for the pulse train, at least"
              : "Scale number for one pulse, at least",
          En207.train(beam.nm(), energyMj(), pulses.durationNs(), pulses.rateKhz(), beam.beamMm()));
    }
  }

  private void scale(String title, Optional<En207.Scale> scale) {
    if (scale.isEmpty()) {
      missing.add(title + ": beyond the highest number there is, or outside its wavelengths.");
      return;
    }
    En207.Scale found = scale.get();
    eyewear.add(
        new Worked(
            title,
            found.marking(),
            "rounded up from " + number(found.exact()),
            En207.SOURCE,
            found.assumptions()));
  }

  private void distances(Limit limit) {
    double mpe = limit.irradiance();
    if (beam.divergenceMrad() != null) {
      distance(
          "Straight beam",
          HazardDistance.direct(
              beam.powerW(), mpe, beam.beamMm(), beam.divergenceMrad(), Edge.ONE_OVER_E2),
          "");
    } else {
      missing.add("Enter the divergence to get the distance of a straight beam.");
    }
    if (beam.lensMm() != null && beam.atLensMm() != null) {
      distance(
          "Behind the lens, if there is no work below it",
          HazardDistance.lens(beam.powerW(), mpe, beam.lensMm(), beam.atLensMm(), Edge.ONE_OVER_E2),
          "");
    } else {
      missing.add(
          "Enter focal length and beam diameter at the lens to get the distance behind the lens.");
    }
    double share = beam.reflectance() == null ? 1 : beam.reflectance();
    distance(
        "Reflection from a matt surface, seen straight on",
        HazardDistance.diffuse(beam.powerW(), mpe, share, 0),
        ", ρ = %s, θ = 0".formatted(number(share)));
  }

  private void distance(String title, HazardDistance.Distance found, String inputs) {
    distances.add(
        new Worked(
            title,
            metres(found.metres()),
            found.formula() + inputs,
            HazardDistance.SOURCE,
            found.assumptions()));
  }

  private String metres(double metres) {
    return number(Upward.distance(metres)) + " m";
  }

  private String number(double value) {
    return QuantityPrinter.number(value, style);
  }

  // A minimum is never rounded down.
  private String upward(double density) {
    String text = String.format(Locale.ROOT, "%.1f", Upward.density(density));
    return style == NumberStyle.DECIMAL_COMMA ? text.replace('.', ',') : text;
  }
}
