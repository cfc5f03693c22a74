package club.emberwell.laser.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Calculated minimum optical density for a beam, cw or pulsed; see {@link EyeLimits#CLOSING}. */
public final class Eyewear {
  private Eyewear() {}

  /**
   * A calculated minimum.
   *
   * @param opticalDensity log10(exposure/limit), 0 where the limit is not exceeded
   * @param irradiance at the eye over the limiting aperture, W/m2
   * @param limit what it was compared with
   * @param assumptions what it rests on
   * @param closing always shown
   */
  public record Density(
      double opticalDensity,
      double irradiance,
      EyeLimits.Limit limit,
      List<String> assumptions,
      String closing) {
    public Density {
      assumptions = List.copyOf(assumptions);
    }
  }

  /**
   * The rules for a pulse train, as optical densities.
   *
   * @param singlePulse rule 1: one pulse by itself
   * @param average rule 2: the average over the exposure
   * @param additive rule 3: one pulse with the edition's factor for many pulses, C_p or C5
   * @param required the greatest of them
   * @param assumptions what it rests on, with the edition
   * @param closing always shown
   */
  public record PulsedDensity(
      double singlePulse,
      double average,
      double additive,
      double required,
      List<String> assumptions,
      String closing) {
    public PulsedDensity {
      assumptions = List.copyOf(assumptions);
    }
  }

  /** log10(exposure/limit) of two values in one unit; 0 where the limit is not exceeded. */
  public static double opticalDensity(double exposure, double limit) {
    return Math.max(0, Math.log10(exposure / limit));
  }

  /** For an accidental look of the usual duration into a beam smaller than the aperture. */
  public static Optional<Density> density(double nm, double powerW) {
    return density(nm, powerW, EyeLimits.accidentalSeconds(nm), null);
  }

  /**
   * For a cw beam, D = log10(E0/MPE), E0 = P / area of the larger of beam and limiting aperture.
   * Empty where there is no limit to compare with.
   *
   * @param seconds exposure, s; for an invisible beam less than 10 s is taken as 10 s
   * @param beamMm beam diameter at the eye, mm; null = smaller than the aperture
   */
  public static Optional<Density> density(double nm, double powerW, double seconds, Double beamMm) {
    boolean raised = !EyeLimits.visible(nm) && seconds < EyeLimits.INVISIBLE_SECONDS;
    double time = raised ? EyeLimits.INVISIBLE_SECONDS : seconds;
    return EyeLimits.limit(nm, time)
        .map(
            limit -> {
              double diameter = Math.max(limit.apertureMm(), beamMm == null ? 0 : beamMm);
              double irradiance = powerW / EyeLimits.areaM2(diameter);
              List<String> notes = new ArrayList<>(limit.assumptions());
              if (raised) {
                notes.add(
                    "Invisible beam: the 0.25 s aversion response does not apply, 10 s was used.");
              }
              notes.add("Continuous beam of the full stated power, all of it reaching the eye.");
              return new Density(
                  opticalDensity(irradiance, limit.irradiance()),
                  irradiance,
                  limit,
                  notes,
                  EyeLimits.CLOSING);
            });
  }

  /**
   * For a pulse train, by the three rules of one edition. Empty where one of the limits is missing.
   *
   * @param energyMj pulse energy, mJ
   * @param seconds exposure, s; for an invisible beam less than 10 s is taken as 10 s
   */
  public static Optional<PulsedDensity> pulsed(
      double nm,
      double energyMj,
      double durationNs,
      double rateKhz,
      double seconds,
      EyeLimits.Edition edition) {
    double time = EyeLimits.visible(nm) ? seconds : Math.max(seconds, EyeLimits.INVISIBLE_SECONDS);
    Optional<EyeLimits.Limit> one = EyeLimits.limit(nm, durationNs * 1e-9, edition);
    Optional<EyeLimits.Limit> all = EyeLimits.limit(nm, time, edition);
    if (one.isEmpty() || all.isEmpty()) {
      return Optional.empty();
    }
    PulseTrain train = PulseTrain.of(rateKhz * 1000, time, EyeLimits.mergingSeconds(nm, edition));
    double exposure = energyMj / 1000 / one.get().apertureM2();
    double limit = one.get().radiantExposure();
    double single = opticalDensity(exposure, limit);
    double average =
        opticalDensity(energyMj * rateKhz / all.get().apertureM2(), all.get().irradiance());
    boolean directive = edition == EyeLimits.Edition.DIRECTIVE_2006_25;
    double factor = directive ? train.cp() : train.c5(time);
    double additive = opticalDensity(exposure * train.merged(), limit * factor);
    List<String> notes = new ArrayList<>(all.get().assumptions());
    notes.add(
        directive
            ? "Directive 2006/25/EC, Table 2.6: one pulse, the average, and one pulse with C_p ="
                + " N^-0.25; the greatest counts."
            : "Newer edition: one pulse, the average, and one pulse with C5 of IEC 60825-1:2014 (5"
                + " N^-0.25 above 600 pulses, not below 0.4; from memory and an open calculator, the"
                + " standard was not read); the greatest counts.");
    notes.add("Pulses that follow closer than T_min (T_i) count as one of their summed energy.");
    return Optional.of(
        new PulsedDensity(
            single,
            average,
            additive,
            Math.max(Math.max(single, average), additive),
            notes,
            EyeLimits.CLOSING));
  }
}
