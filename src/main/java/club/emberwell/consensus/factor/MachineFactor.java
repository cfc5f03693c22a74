package club.emberwell.consensus.factor;

import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Figures;
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

  /** In plain words. */
  public String sentence() {
    String between = Figures.two(interval.low()) + " to " + Figures.two(interval.high());
    return interval.contains(1)
        ? "Your machine takes about the dose of others (%s times), from %d works."
            .formatted(between, works)
        : "Your machine takes %s (%s) times the dose of others, from %d works."
            .formatted(Figures.two(factor), between, works);
  }
}
