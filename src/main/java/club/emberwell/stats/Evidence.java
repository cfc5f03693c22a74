package club.emberwell.stats;

/**
 * How much a range rests on, in words; always shown next to the counts that made it.
 *
 * <p>The words and limits are our own (facts of this project, no outside source): 0 voices nothing
 * yet, 1 one voice, 2 two voices, 3-5 sparse, 6-8 some, from 9 good where the interval of the
 * median spans at most a factor of 2, from 20 strong where it spans at most 1.5, some where it
 * spans more; split wherever camps are found.
 */
public enum Evidence {
  NOTHING_YET("nothing yet"),
  ONE_VOICE("one voice"),
  TWO_VOICES("two voices"),
  SPARSE("sparse"),
  SOME("some"),
  GOOD("good"),
  STRONG("strong"),
  SPLIT("split");

  private static final int SPARSE_FROM = 3;
  private static final int SOME_FROM = 6;
  private static final int GOOD_FROM = 9;
  private static final int STRONG_FROM = 20;
  private static final double GOOD_RATIO = 2;
  private static final double STRONG_RATIO = 1.5;

  private final String words;

  Evidence(String words) {
    this.words = words;
  }

  /** As it stands on pages. */
  public String words() {
    return words;
  }

  /**
   * The word for a range.
   *
   * @param voices members in the range, not negative
   * @param intervalRatio upper over lower bound of the median's interval; NaN where there is none
   * @param camps whether the voices fall into camps
   */
  public static Evidence of(int voices, double intervalRatio, boolean camps) {
    if (voices < 0) {
      throw new IllegalArgumentException("voices: " + voices);
    }
    if (camps) {
      return SPLIT;
    }
    if (voices >= STRONG_FROM && intervalRatio <= STRONG_RATIO) {
      return STRONG;
    }
    if (voices >= GOOD_FROM && intervalRatio <= GOOD_RATIO) {
      return GOOD;
    }
    if (voices >= SOME_FROM) {
      return SOME;
    }
    if (voices >= SPARSE_FROM) {
      return SPARSE;
    }
    return values()[voices];
  }

  /** The word for voices without camps: their count and the interval of their median decide. */
  public static Evidence of(double[] voices) {
    double ratio = MedianInterval.of(voices).map(Interval::ratio).orElse(Double.NaN);
    return of(voices.length, ratio, false);
  }
}
