package club.emberwell.eyewear;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.Housing;
import club.emberwell.bench.Machine;
import club.emberwell.laser.Laser;
import club.emberwell.laser.safety.Coverage;
import club.emberwell.laser.safety.EyeBeam;
import club.emberwell.laser.safety.EyeMinima;
import club.emberwell.laser.safety.HazardDistance;
import club.emberwell.laser.safety.HazardDistance.Distance;
import club.emberwell.laser.safety.HazardDistance.Edge;
import club.emberwell.quantity.NumberStyle;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/**
 * What is calculated for the eyes beside one machine, and how its owner's glasses stand to it.
 *
 * @param fits the worst first
 * @param warnings of the beam and its housing, each a sentence
 */
public record EyeProtection(
    Machine machine, EyeMinima minima, List<Reach> reaches, List<String> warnings, List<Fit> fits) {
  private static final String AVERAGE =
      "By the average power alone: single pulses may be too strong further away.";

  /** How one pair stands to it. */
  public record Fit(Glasses glasses, Coverage coverage) {}

  /** Ways a beam goes on. */
  public enum Way {
    DIRECT("Straight beam"),
    LENS("Behind the lens, if there is no work below it"),
    DIFFUSE("Matt reflection");

    private final String label;

    Way(String label) {
      this.label = label;
    }

    public String label() {
      return label;
    }
  }

  /**
   * How far a beam exceeds the limit.
   *
   * @param distance null where something is not known
   * @param missing what is; null where it is told
   */
  public record Reach(Way way, Distance distance, String missing) {
    private Reach of(EyeBeam beam) {
      if (distance == null) {
        return this;
      }
      return new Reach(way, beam.pulsed() ? distance.assuming(AVERAGE) : distance, null);
    }
  }

  /** By the laser's full rated power; the beam before the lens counts as the one at the eye. */
  public static EyeProtection of(Machine machine, List<Glasses> pairs, NumberStyle style) {
    Laser laser = machine.laser();
    EyeMinima minima =
        EyeMinima.of(
            new EyeBeam(
                laser.wavelengthNm(),
                laser.ratedPowerW(),
                laser.regime(),
                machine.inputBeamMm(),
                null));
    List<Fit> fits =
        pairs.stream()
            .map(pair -> new Fit(pair, Coverage.of(pair.printed(), minima, style)))
            .sorted(Comparator.comparing(fit -> fit.coverage().verdict()))
            .toList();
    return new EyeProtection(machine, minima, reaches(machine, minima), warnings(machine), fits);
  }

  /** The worst news in a few words: an open beam that is class 4, then the worst pair. */
  public String worst() {
    boolean open =
        machine.housing() == Housing.OPEN && machine.laser().ratedPowerW() > EyeBeam.CLASS_3B_W;
    String pair =
        fits.isEmpty()
            ? "no glasses entered"
            : "%s: %s"
                .formatted(fits.get(0).glasses().name(), fits.get(0).coverage().verdict().label());
    return open ? "open class 4 beam; " + pair : pair;
  }

  private static List<Reach> reaches(Machine machine, EyeMinima minima) {
    if (minima.limit() == null) {
      return List.of();
    }
    double watts = machine.laser().ratedPowerW();
    double limit = minima.limit().irradiance();
    Double focal = machine.laser().lensFocalMm();
    Double beam = machine.inputBeamMm();
    Double divergence = machine.divergenceMrad();
    Distance direct =
        divergence == null
            ? null
            : HazardDistance.direct(watts, limit, beam, divergence, Edge.ONE_OVER_E2);
    Distance lens =
        focal == null || beam == null
            ? null
            : HazardDistance.lens(watts, limit, focal, beam, Edge.ONE_OVER_E2);
    Distance diffuse =
        HazardDistance.diffuse(watts, limit, 1, 0)
            .assuming("All of it is reflected (ρ = 1), seen straight on (θ = 0).");
    return Stream.of(
            new Reach(Way.DIRECT, direct, "Its divergence is not known."),
            new Reach(Way.LENS, lens, "Needs lens and beam before the lens."),
            new Reach(Way.DIFFUSE, diffuse, null))
        .map(reach -> reach.of(minima.beam()))
        .toList();
  }

  private static List<String> warnings(Machine machine) {
    List<String> said = new ArrayList<>();
    Housing housing = machine.housing();
    boolean classFour = machine.laser().ratedPowerW() > EyeBeam.CLASS_3B_W;
    if (housing == Housing.OPEN) {
      said.add(
          classFour
              ? "Open class 4 beam (over 0.5 W): it and its reflections injure eyes and skin and"
                  + " set fire. Everybody in the room needs protection, and nobody else may come"
                  + " in."
              : "Open beam: everybody in the room needs protection.");
    } else if (housing == Housing.CLOSED) {
      said.add(
          "No interlock: with the lid open the beam stays on"
              + (classFour ? ", and it is class 4 (over 0.5 W)." : ".")
              + " Have one fitted by somebody qualified, and never look in.");
    } else if (housing == null) {
      said.add(
          "Nobody said whether this machine is closed, so count it as open"
              + (classFour ? ": a class 4 beam (over 0.5 W)." : "."));
    } else {
      said.add(
          "An interlock that is bridged or a lid that is off leaves the beam open"
              + (classFour ? ", and it is class 4 (over 0.5 W)." : "."));
    }
    if (FieldReader.isAbsent(machine.written().laser().wavelength())) {
      said.add("The wavelength is the usual one of such a laser. Read yours from its label.");
    }
    return said;
  }
}
