package club.emberwell.report.reading;

/** Every limit of what a report says beside those in the catalogues of settings and the work. */
public final class ReadingLimits {
  /** Longest word of a vocabulary, in characters. */
  public static final int WORDS = 120;

  /** Trials in one report: a grid of 20 by 20. */
  public static final int TRIALS = 400;

  public static final int DEFECTS = 10;

  /** Highest row or column of a grid. */
  public static final int GRID_SIDE = 400;

  public static final int BEST_QUALITY = 5;

  private ReadingLimits() {}
}
