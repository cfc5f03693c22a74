package club.emberwell.report.reading;

import club.emberwell.quantity.Bounds;

/**
 * Every limit of what a report says, in one place. Bounds are inclusive, in canonical units, and
 * far outside the plausible: whatever lies beyond cannot be meant. What is merely unusual is only
 * warned of.
 */
public final class ReadingLimits {
  /** Longest word for a material, coating or colour, in characters. */
  public static final int WORDS = 120;

  public static final int NOTES = 4000;
  public static final int LOT = 80;
  public static final int CONTROLLER_VERSION = 80;

  /** Trials in one report: a grid of 20 by 20. */
  public static final int TRIALS = 400;

  public static final int DEFECTS = 10;

  /** Highest row or column of a grid. */
  public static final int GRID_SIDE = 400;

  public static final int BEST_QUALITY = 5;

  public static final Bounds THICKNESS_MM = new Bounds(0.000_1, 10_000);

  private ReadingLimits() {}
}
