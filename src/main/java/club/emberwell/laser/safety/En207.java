package club.emberwell.laser.safety;

import club.emberwell.laser.Regime;
import club.emberwell.remark.Coded;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Scale numbers of laser eye protectors after EN 207:2017 (superseded by ISO 19818-1:2021).
 * Formulas read in two encyclopaedia mirrors and an open library's documentation, not in the
 * standard.
 */
public final class En207 {
  /** Where the numbers come from, for whoever reads one. */
  public static final String SOURCE =
      "EN 207:2017 as given in two encyclopaedia mirrors, its pulse trains in an open library's"
          + " documentation; superseded by ISO 19818-1:2021";

  /** The highest number there is. */
  private static final int HIGHEST = 10;

  /** The time over which pulses are counted, s. */
  private static final double TRAIN_SECONDS = 10;

  private static final String BESIDE =
      "the average power needs its own number under condition D; eyewear must carry both.";

  private En207() {}

  /** Test condition by pulse duration, with its letter in the marking. */
  public enum Condition implements Coded {
    /** Continuous: over 0.25 s; W/m2. */
    D("continuous"),
    /** Over 1 us to 0.25 s; J/m2. */
    I("pulses over 1 µs"),
    /** From 1 ns to 1 us; J/m2. */
    R("pulses of 1 ns to 1 µs"),
    /** Under 1 ns; J/m2 from 315 to 1400 nm, else W/m2. */
    M("pulses under 1 ns");

    private final String label;

    Condition(String label) {
      this.label = label;
    }

    /** The letter itself. */
    @Override
    public String code() {
      return name();
    }

    public String label() {
      return label;
    }

    /** The condition of a pulse duration in ns. */
    public static Condition of(double durationNs) {
      return of(Regime.ofPulseDuration(durationNs));
    }

    /** The condition of a kind of beam. */
    public static Condition of(Regime regime) {
      return switch (regime) {
        case CW -> D;
        case LONG -> I;
        case NS -> R;
        case PS, FS -> M;
      };
    }
  }

  /**
   * The calculated minimum.
   *
   * @param exact before rounding up
   * @param number n of LBn
   * @param marking as it stands on a protector, e.g. {@code D 1064 LB6}
   */
  public record Scale(
      double exact, int number, String marking, List<String> assumptions, String closing) {
    public Scale {
      assumptions = List.copyOf(assumptions);
    }
  }

  /** For a cw beam: power in W over a beam of a diameter in mm. */
  public static Optional<Scale> continuous(double nm, double powerW, double beamMm) {
    return scale(Condition.D, nm, powerW / EyeLimits.areaM2(beamMm));
  }

  /**
   * For one pulse: energy in mJ over a beam of a diameter in mm, by the condition its duration in
   * ns falls under. Beside it the average power needs its own number under condition D.
   */
  public static Optional<Scale> pulse(
      double nm, double energyMj, double durationNs, double beamMm) {
    Condition condition = Condition.of(durationNs);
    double exposure = energyMj / 1000 / EyeLimits.areaM2(beamMm);
    boolean asPower = condition == Condition.D || condition == Condition.M && !retinal(nm);
    return scale(condition, nm, asPower ? exposure / (durationNs * 1e-9) : exposure);
  }

  /**
   * For a pulse train, beside the number of its average power under condition D. From 400 to 1400
   * nm the load is E' = E N^(1/4) with N the pulses in 10 s; elsewhere one pulse counts. Read in
   * the documentation of an open library ("Choosing eyewear", lasersafety 0.1), which follows the
   * laser safety guidelines of University College Cork; the standard was not read.
   *
   * @param rateKhz pulse repetition rate, kHz
   */
  public static Optional<Scale> train(
      double nm, double energyMj, double durationNs, double rateKhz, double beamMm) {
    if (!needsTrain(nm) || Condition.of(durationNs) == Condition.D) {
      return pulse(nm, energyMj, durationNs, beamMm);
    }
    PulseTrain train =
        PulseTrain.of(
            rateKhz * 1000,
            TRAIN_SECONDS,
            EyeLimits.mergingSeconds(nm, EyeLimits.Edition.DIRECTIVE_2006_25));
    double exposure = energyMj / 1000 / EyeLimits.areaM2(beamMm);
    return scale(
        Condition.of(durationNs),
        nm,
        exposure * train.merged() * train.load(),
        List.of(
            "Pulse train: E' = E N^(1/4), N the pulses in 10 s, as secondary texts give it; one"
                + " pulse alone would need a lower number.",
            "Pulses that follow closer than T_min (Directive 2006/25/EC, Table 2.6) count as one of"
                + " their summed energy: the stricter reading, from memory.",
            "Also " + BESIDE));
  }

  /** True where many pulses need more than one of them. */
  public static boolean needsTrain(double nm) {
    return nm >= 400 && nm <= 1400;
  }

  /**
   * The smallest number for a load, W/m2 or J/m2 as the condition says; empty outside 180 nm to 1
   * mm and where even the highest number is too small.
   */
  public static Optional<Scale> scale(Condition condition, double nm, double load) {
    return scale(
        condition,
        nm,
        load,
        condition == Condition.D ? List.of() : List.of("One pulse only; " + BESIDE));
  }

  private static Optional<Scale> scale(
      Condition condition, double nm, double load, List<String> about) {
    if (!(nm >= 180 && nm <= 1e6 && load > 0)) {
      return Optional.empty();
    }
    double exact = exact(condition, nm, load);
    // the tiny step keeps a load that meets a number exactly from being pushed to the next
    int number = Math.max(1, (int) Math.ceil(exact - 1e-9));
    if (number > HIGHEST) {
      return Optional.empty();
    }
    List<String> notes = new ArrayList<>();
    notes.add("EN 207:2017, formulas not read in the standard itself; rounded up.");
    notes.add(
        "No correction for beams wider than the test beam of 1 mm; the standard's can be higher.");
    notes.addAll(about);
    String marking = String.format(Locale.ROOT, "%s %.0f LB%d", condition, nm, number);
    return Optional.of(new Scale(exact, number, marking, notes, EyeLimits.CLOSING));
  }

  private static double exact(Condition condition, double nm, double load) {
    int column = nm <= 315 ? 0 : retinal(nm) ? 1 : 2;
    double lg = Math.log10(load);
    return switch (condition) {
      case D -> lg + new double[] {3, -1, -3}[column];
      case I, R -> lg + new double[] {-1 - Math.log10(3), 3 - Math.log10(5), -2}[column];
      case M -> lg + new double[] {-10 - Math.log10(3), 4 - Math.log10(1.5), -11}[column];
    };
  }

  private static boolean retinal(double nm) {
    return nm > 315 && nm <= 1400;
  }
}
