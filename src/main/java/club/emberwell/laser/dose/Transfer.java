package club.emberwell.laser.dose;

import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.remark.Coded;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whether settings of one machine may be scaled to another by equal nominal dose, and to what.
 *
 * <p>The bounds are this project's own rules. What they rest on: cw and ns pulses strip the same
 * paint by different mechanisms (Li et al., Photonics 2024, 11(1) 25; Photonics 2024, 11(1) 82);
 * pulse duration and rate matter at equal fluence (Brygo et al., Appl. Surf. Sci. 252 (2006) 2131);
 * shades differ with the spot at equal dose (Jurek & Wagnerova, Eur. J. Wood Prod. 79, 1097
 * (2021)); on one machine dose explains much but P/v is no perfect invariant (Gurau & Petru, BioRes
 * 13(4) 8168, 2018).
 */
public final class Transfer {
  /** Beam diameters that differ by more than this share are not compared by dose. */
  static final double SPOT_SHARE = 0.25;

  /** Speed and power within this factor: a start for a test grid. */
  public static final double NEAR = 2;

  /** Beyond {@link #NEAR} and within this factor: weak. */
  static final double FAR = 5;

  /** Pulse quantities must agree within this factor. */
  static final double PULSE = 1.5;

  private Transfer() {}

  /** What may be said about the other machine. */
  public enum Verdict implements Coded {
    START_OF_GRID("start-of-grid", "Start of a test grid"),
    WEAK("weak", "Only a rough start"),
    SHOW_SIDE_BY_SIDE("side-by-side", "No number: compare side by side"),
    NO_TRANSFER("no-transfer", "Does not carry over");

    private final String code;
    private final String label;

    Verdict(String code, String label) {
      this.code = code;
      this.label = label;
    }

    @Override
    public String code() {
      return code;
    }

    public String label() {
      return label;
    }

    /** True where a scaled speed comes with it. */
    public boolean givesNumber() {
      return this == START_OF_GRID || this == WEAK;
    }
  }

  /**
   * What is asked.
   *
   * @param from the machine the settings worked on
   * @param used those settings
   * @param to the reader's machine
   * @param planned what the reader would set there, or null; what is null in it is taken from
   *     {@code used} (power: the same W, at most the rated power). Its speed does not enter the
   *     scaling and is only shown beside the other where no number may be given
   * @param sameThickness whether the work is as thick
   * @param sameCoating whether material and coating are the same
   */
  public record Question(
      Laser from,
      Settings used,
      Laser to,
      Settings planned,
      Process process,
      boolean sameThickness,
      boolean sameCoating) {}

  /**
   * The answer.
   *
   * @param reasons sentences, the deciding one first
   * @param start what to set in the middle of a grid; null unless the verdict gives a number
   * @param sideBySide the quantities that matter, never empty
   */
  public record Outcome(
      Verdict verdict, List<String> reasons, Settings start, List<Comparison> sideBySide) {
    public Outcome {
      reasons = List.copyOf(reasons);
      sideBySide = List.copyOf(sideBySide);
    }

    /** The scaled speed, mm/s; null unless the verdict gives a number. */
    public Double speedMmS() {
      return start == null ? null : start.speedMmS();
    }
  }

  /** Judges; pure, never throws for missing values. */
  public static Outcome judge(Question asked) {
    Scaled scaled = Scaled.of(asked);
    Optional<Outcome> refused = refusal(asked, scaled);
    if (refused.isPresent()) {
      return refused.get();
    }
    return asked.from().regime().pulsed() ? pulsed(asked, scaled) : continuous(asked, scaled);
  }

  private static Optional<Outcome> refusal(Question asked, Scaled scaled) {
    Laser from = asked.from();
    Laser to = asked.to();
    if (!sameWavelengthClass(from, to)) {
      return Optional.of(
          scaled.without(
              Verdict.NO_TRANSFER,
              "These settings are for "
                  + wavelength(from)
                  + ", your laser has "
                  + wavelength(to)
                  + ": they do not carry over."));
    }
    if (from.regime() == null || to.regime() == null) {
      return Optional.of(
          scaled.without(
              Verdict.SHOW_SIDE_BY_SIDE,
              "We do not know whether both lasers are continuous or pulsed."));
    }
    if (from.regime() != to.regime()) {
      return Optional.of(
          scaled.without(
              Verdict.NO_TRANSFER,
              "These settings are for a "
                  + from.regime().label()
                  + " laser, yours is "
                  + to.regime().label()
                  + ": they do not carry over."));
    }
    if (!asked.sameCoating()) {
      return Optional.of(
          scaled.without(
              Verdict.SHOW_SIDE_BY_SIDE, "Another material or coating needs another dose."));
    }
    if (!asked.sameThickness()) {
      return Optional.of(
          scaled.without(
              Verdict.SHOW_SIDE_BY_SIDE,
              asked.process().doseKind() == DoseKind.LINE
                  ? "Another thickness does not scale in a straight line: compare J/mm, and J/mm² of"
                      + " cut face, of others."
                  : "Another thickness carries heat away differently."));
    }
    if (scaled.start() == null) {
      return Optional.of(
          scaled.without(
              Verdict.SHOW_SIDE_BY_SIDE,
              "Power, speed or line spacing is missing, so the same dose cannot be worked out."));
    }
    return Optional.empty();
  }

  private static Outcome continuous(Question asked, Scaled scaled) {
    Double spot =
        new Comparison(
                "",
                "",
                diameter(asked.from(), asked.used()),
                diameter(asked.to(), scaled.planned()))
            .ratio();
    if (spot != null && Math.abs(spot - 1) > SPOT_SHARE + 1e-9) {
      return scaled.without(
          Verdict.SHOW_SIDE_BY_SIDE,
          "The spot sizes differ by more than 25 %: the same dose does not do the same.");
    }
    if (spot != null) {
      return byRatios(scaled, List.of());
    }
    String unknown =
        "A spot size is missing. The same dose does the same only where spots are within 25 % of"
            + " each other. Test from half to one and a half times.";
    Outcome outcome = byRatios(scaled, List.of(unknown));
    return outcome.verdict() == Verdict.START_OF_GRID
        ? scaled.with(Verdict.WEAK, List.of(unknown))
        : outcome;
  }

  private static Outcome pulsed(Question asked, Scaled scaled) {
    if (asked.from().regime() != Regime.NS) {
      return scaled.without(
          Verdict.SHOW_SIDE_BY_SIDE,
          "Nobody knows how to carry over settings of "
              + asked.from().regime().label()
              + " lasers.");
    }
    boolean defocused = defocused(asked.used()) || defocused(scaled.planned());
    boolean matched = scaled.pulseQuantities().stream().allMatch(c -> c.within(PULSE));
    if (defocused || !matched) {
      return scaled.without(
          Verdict.SHOW_SIDE_BY_SIDE,
          "Match pulses first, dose last. Peak fluence, pulses per place and pulse duration must be"
              + " known, at focus, within a factor of 1.5.");
    }
    return byRatios(scaled, List.of("Match pulses first, dose last."));
  }

  private static Outcome byRatios(Scaled scaled, List<String> also) {
    Verdict verdict;
    List<String> reasons = new ArrayList<>();
    if (scaled.ratiosWithin(NEAR)) {
      verdict = Verdict.START_OF_GRID;
      reasons.add("Same nominal dose. A start for a test, not a finished setting.");
    } else if (scaled.ratiosWithin(FAR)) {
      verdict = Verdict.WEAK;
      reasons.add(
          "Speed or power differs more than twofold, so heat spreads differently. Test from half to"
              + " one and a half times.");
    } else {
      return scaled.without(
          Verdict.NO_TRANSFER,
          "Speed or power differs more than fivefold: the settings do not carry over.");
    }
    reasons.addAll(also);
    return scaled.with(verdict, reasons);
  }

  private static boolean sameWavelengthClass(Laser a, Laser b) {
    if (a.band() != b.band()) {
      return false;
    }
    // outside the named bands only the very same line is the same class
    return a.band() != WavelengthBand.OTHER || Math.abs(a.wavelengthNm() - b.wavelengthNm()) <= 10;
  }

  private static String wavelength(Laser laser) {
    return laser.band() == WavelengthBand.OTHER
        ? Math.round(laser.wavelengthNm()) + " nm"
        : laser.band().label();
  }

  private static Double diameter(Laser laser, Settings settings) {
    return defocused(settings) ? null : Dose.positive(laser.beamDiameterUm());
  }

  private static boolean defocused(Settings settings) {
    Double offset = settings.number(Setting.FOCUS_OFFSET);
    return offset != null && offset != 0;
  }
}
