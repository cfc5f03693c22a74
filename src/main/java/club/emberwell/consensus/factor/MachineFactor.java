package club.emberwell.consensus.factor;

import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.stats.Interval;

/**
 * How many times the dose of other members' machines one machine takes, in one wavelength band and
 * regime.
 *
 * @param factor 1.2 = it takes 1.2 times the dose of others
 * @param interval 95 %
 * @param works it shares with machines of others
 */
public record MachineFactor(double factor, Interval interval, int works) {
  /** Whether it is known well enough to be said and used. */
  public boolean told() {
    return interval.ratio() <= ConsensusLimits.WIDEST_RATIO;
  }

  /** Whether it can be told from 1. */
  public boolean differs() {
    return !interval.contains(1);
  }
}
