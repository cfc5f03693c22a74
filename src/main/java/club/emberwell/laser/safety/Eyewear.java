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
   * The three rules for a pulse train, as optical densities.
   *
   * @param singlePulse rule 1: one pulse by itself
   * @param average rule 2: the average over the exposure
   * @param additive rule 3 of the older edition: one pulse with C_p = N^-0.25
   * @param required the greatest of the rules that the edition applies to a point source
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
   * For a pulse train. ICNIRP 2013 and IEC 60825-1:2014 no longer reduce the single-pulse limit for
   * point sources (C5 = 1 up to 5 mrad; from memory), the Directive's Table 2.6 does (C_p =
   * N^-0.25). Empty where one of the limits is missing.
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
    double exposure = energyMj / 1000 / one.get().apertureM2();
    double pulses = Math.max(1, rateKhz * 1000 * time);
    double single = opticalDensity(exposure, one.get().radiantExposure());
    double average =
        opticalDensity(energyMj * rateKhz / all.get().apertureM2(), all.get().irradiance());
    double additive =
        opticalDensity(exposure, one.get().radiantExposure() * Math.pow(pulses, -0.25));
    boolean old = edition == EyeLimits.Edition.DIRECTIVE_2006_25;
    double required = Math.max(Math.max(single, average), old ? additive : 0);
    List<String> notes = new ArrayList<>(all.get().assumptions());
    notes.add(
        old
            ? "Directive 2006/25/EC, Table 2.6: one pulse, the average, and one pulse with C_p ="
                + " N^-0.25; the greatest counts."
            : "Newer edition: one pulse and the average; C_p is shown but does not apply to a point"
                + " source (from memory).");
    notes.add("Every pulse counts by itself, even where pulses follow closer than T_min.");
    return Optional.of(
        new PulsedDensity(single, average, additive, required, notes, EyeLimits.CLOSING));
  }
}
