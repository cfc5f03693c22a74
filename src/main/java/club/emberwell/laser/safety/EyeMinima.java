package club.emberwell.laser.safety;

import club.emberwell.laser.safety.En207.Condition;
import club.emberwell.laser.safety.EyeLimits.Edition;
import club.emberwell.laser.safety.EyeLimits.Limit;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What eyewear would need at least for a beam, as far as it can be calculated. Densities are
 * rounded up to a tenth, scale numbers to the next whole one.
 *
 * @param limit with its aperture, time and branch; null where the tables are silent
 * @param average for the average power, seen through the limiting aperture; null without a limit
 * @param density that is needed; null where there is none to tell: no limit, or pulses unknown
 * @param scales the number for each letter that is needed; a letter without a number is absent
 * @param letters under which the beam falls
 */
public record EyeMinima(
    EyeBeam beam,
    Limit limit,
    Eyewear.Density average,
    Double density,
    Map<Condition, En207.Scale> scales,
    Set<Condition> letters) {
  /**
   * For an accidental look of the usual duration; the beam counts as narrower than the aperture.
   */
  public static EyeMinima of(EyeBeam beam) {
    double seconds = EyeLimits.accidentalSeconds(beam.nm());
    Limit limit = EyeLimits.limit(beam.nm(), seconds).orElse(null);
    Eyewear.Density average = Eyewear.density(beam.nm(), beam.powerW(), seconds, null).orElse(null);
    Set<Condition> letters = EnumSet.of(Condition.D);
    if (beam.pulsed()) {
      letters.add(
          beam.pulses() == null
              ? Condition.of(beam.regime())
              : Condition.of(beam.pulses().durationNs()));
    }
    return new EyeMinima(
        beam, limit, average, density(beam, average, seconds), scales(beam), letters);
  }

  private static Double density(EyeBeam beam, Eyewear.Density average, double seconds) {
    if (average == null) {
      return null;
    }
    if (!beam.pulsed()) {
      return Upward.density(average.opticalDensity());
    }
    return beam.pulses() == null ? null : train(beam, average.opticalDensity(), seconds);
  }

  /** The stricter of both editions; null where neither knows such pulses. */
  private static Double train(EyeBeam beam, double average, double seconds) {
    double strictest = average;
    boolean known = false;
    for (Edition edition : new Edition[] {Edition.ICNIRP_2013, Edition.DIRECTIVE_2006_25}) {
      Optional<Eyewear.PulsedDensity> found =
          Eyewear.pulsed(
              beam.nm(),
              beam.energyMj(),
              beam.pulses().durationNs(),
              beam.pulses().rateKhz(),
              seconds,
              edition);
      known |= found.isPresent();
      strictest = Math.max(strictest, found.map(Eyewear.PulsedDensity::required).orElse(0.0));
    }
    return known ? Upward.density(strictest) : null;
  }

  private static Map<Condition, En207.Scale> scales(EyeBeam beam) {
    Map<Condition, En207.Scale> found = new EnumMap<>(Condition.class);
    if (beam.diameterMm() == null) {
      return found;
    }
    En207.continuous(beam.nm(), beam.powerW(), beam.diameterMm())
        .ifPresent(scale -> found.put(Condition.D, scale));
    if (beam.pulsed() && beam.pulses() != null) {
      double ns = beam.pulses().durationNs();
      En207.train(beam.nm(), beam.energyMj(), ns, beam.pulses().rateKhz(), beam.diameterMm())
          .ifPresent(scale -> found.put(Condition.of(ns), scale));
    }
    return found;
  }

  /** Whether it is told how strong a scale number must be. */
  public boolean scaled() {
    return beam.diameterMm() != null;
  }
}
