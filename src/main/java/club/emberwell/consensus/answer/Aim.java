package club.emberwell.consensus.answer;

import club.emberwell.laser.Amount;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Derived;
import club.emberwell.laser.dose.Dose;
import club.emberwell.laser.dose.IsoDose;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.RoundNumber;
import java.util.Optional;

/**
 * A dose to be reached on one machine.
 *
 * @param dose J/mm2 for area work, J/mm for line work
 */
record Aim(Laser laser, Process process, double dose) {
  private static final double FULL = 100;

  /** A rounded value is at most half of this share away (own rule, no source). */
  private static final double STEP_SHARE = 0.05;

  /**
   * Whole settings that give the dose.
   *
   * @param dose what the rounded settings give, by {@link Dose}
   * @param lowered whether the power is lower than planned since the machine runs no faster
   */
  record Reached(Settings settings, double dose, boolean lowered) {}

  /**
   * Keeps all but the speed, and the power too where the machine runs fast enough; both rounded to
   * sensible steps. Empty where power or line spacing is missing.
   *
   * @param kept what to keep; its speed does not matter
   */
  Optional<Reached> with(Settings kept) {
    Double share = share(kept);
    Double runs = Dose.runs(process, kept);
    Double spacing =
        process.doseKind() == DoseKind.AREAL ? kept.lineSpacingMm() : Double.valueOf(Double.NaN);
    if (share == null || !(share > 0) || runs == null || spacing == null || spacing <= 0) {
      return Optional.empty();
    }
    double speed = speed(share, spacing, runs);
    Double top = laser.maxSpeedMmS();
    boolean lowered = top != null && speed > top * (1 + STEP_SHARE / 2);
    if (lowered) {
      double watts = IsoDose.powerFor(process.doseKind(), dose, top, spacing, runs);
      share = rounded(FULL * watts / laser.ratedPowerW());
      speed = speed(share, spacing, runs);
    }
    speed = rounded(speed);
    Settings settings =
        at(kept, share).with(Setting.SPEED, top == null ? speed : Math.min(speed, top));
    return Optional.of(new Reached(settings, doseOf(settings), lowered));
  }

  /** The plan without a speed: what is kept, with its power as a share of this machine's. */
  Optional<Settings> plan(Settings kept) {
    return Optional.ofNullable(share(kept)).map(share -> at(kept, share).with(Setting.SPEED, null));
  }

  private static Settings at(Settings kept, double share) {
    return kept.with(Setting.POWER, new Amount(QuantityKind.POWER_PERCENT, share));
  }

  /** In percent of what this machine is rated at; what was set in W stays as many W. */
  private Double share(Settings kept) {
    if (kept.powerPercent() != null) {
      return kept.powerPercent();
    }
    double rated = laser.ratedPowerW();
    return kept.powerW() == null || !(rated > 0)
        ? null
        : Double.valueOf(Math.min(FULL, rounded(FULL * kept.powerW() / rated)));
  }

  private double speed(double share, double spacing, double runs) {
    double watts = laser.ratedPowerW() * share / FULL;
    return IsoDose.speedFor(process.doseKind(), dose, watts, spacing, runs);
  }

  private double doseOf(Settings settings) {
    Derived derived = Dose.derive(laser, process, settings);
    Double found = derived.dose(process.doseKind());
    return found == null ? Double.NaN : found;
  }

  /** To the largest round step that is small beside the value. */
  static double rounded(double value) {
    return RoundNumber.near(value, value * STEP_SHARE);
  }
}
