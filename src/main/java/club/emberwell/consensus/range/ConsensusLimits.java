package club.emberwell.consensus.range;

/** How much of a range is worked out. The rules of statistics stand with their methods. */
public final class ConsensusLimits {
  /**
   * A trial this many times off the middle, beyond the cut of the modified z, and on the side that
   * its effect speaks against is taken for a slip: every usual one of units is larger (own rule, no
   * source).
   */
  public static final double TRIAL_OFF = 5;

  /** Points of the curve of a window. */
  public static final int CURVE_POINTS = 61;

  /** Trials drawn under the curve; more are thinned evenly. */
  public static final int MARKS = 400;

  /** How far the curve is drawn beyond the doses tried, as a factor; grey there. */
  public static final double CURVE_MARGIN = 1.5;

  /** Trials up to which a search without words or material lists the works it met. */
  public static final int LISTED = 20_000;

  /** Groups worked out in full, largest first; the rest keep to the core. */
  public static final int DETAILED = 8;

  /** A ratio whose interval spans a larger factor says nothing and is not told. */
  public static final double WIDEST_RATIO = 10;

  /** Values of one property that are compared with the most frequent one. */
  public static final int CONTRASTED = 5;

  /** Below so many voices a range borrows. */
  public static final int BORROW_BELOW = 6;

  /** Fewest siblings to borrow from: with fewer nobody knows how much siblings differ. */
  public static final int FEWEST_SIBLINGS = 3;

  /** Fewest repeats behind a variance within. */
  public static final int FEWEST_REPEATS = 3;

  /** Ranges offered by borrowing alone where nobody did exactly this. */
  public static final int BORROWED_ALONE = 3;

  /** More works than this in one range get only the general cautions and the bans. */
  public static final int CAUTIONED_WORKS = 6;

  /** Fewest and most combinations side by side. */
  public static final int FEWEST_COMPARED = 2;

  public static final int MOST_COMPARED = 4;

  private ConsensusLimits() {}
}
