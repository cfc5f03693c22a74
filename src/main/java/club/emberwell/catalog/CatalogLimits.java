package club.emberwell.catalog;

/** Every limit of this package in one place. */
public final class CatalogLimits {
  /** Longest text that is looked up or queued, in characters. */
  public static final int TEXT = 120;

  /** How many near terms a failed lookup names. */
  public static final int SUGGESTIONS = 5;

  /** A near term may differ by this share of the longer text, in edits. */
  public static final double SUGGESTION_DISTANCE = 0.34;

  /** Longest run of words of an unresolved text that is checked for a prohibited material. */
  static final int SCREENED_WORDS = 4;

  /** Longest reason or source a moderator may write. */
  public static final int REASON = 1000;

  /** Substances, steps and things not to do of one caution: a card has to fit a printed page. */
  public static final int CAUTION_LINES = 12;

  /** Rows of the unfiled queue and of a history shown at once. */
  public static final int PAGE = 50;

  private CatalogLimits() {}
}
