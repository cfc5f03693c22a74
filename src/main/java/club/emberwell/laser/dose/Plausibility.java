package club.emberwell.laser.dose;

import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Settings;
import club.emberwell.remark.Remark;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Looks over a trial for values that are possible but unlikely. Only warnings, never errors: the
 * bounds of the trade are soft and mostly from memory. Remark ids are stable.
 */
public final class Plausibility {
  /** What a rule looks at. */
  record Trial(Laser laser, Process process, Settings settings, Derived derived) {
    Regime regime() {
      return laser.regime();
    }

    boolean nanosecond() {
      return laser.regime() == Regime.NS;
    }
  }

  /** One thing to look for; empty where all is usual. */
  interface Rule {
    Optional<Remark> check(Trial trial);
  }

  private Plausibility() {}

  /** Warnings in a fixed order, each at the field it touches. */
  public static List<Remark> check(
      Laser laser, Process process, Settings settings, Derived derived) {
    Trial trial = new Trial(laser, process, settings, derived);
    return Stream.of(PlausibilityRules.ALL, PlausibilityRules.USUAL)
        .flatMap(List::stream)
        .map(rule -> rule.check(trial))
        .flatMap(Optional::stream)
        .toList();
  }
}
