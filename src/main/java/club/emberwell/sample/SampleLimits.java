package club.emberwell.sample;

/** Every limit of a sample. */
public final class SampleLimits {
  public static final int PER_MEMBER = 2_000;

  /** Characters of what it is called, and of where it is kept. */
  public static final int WHAT = 120;

  public static final int BOX = 80;
  public static final int PLACE = 120;
  public static final int NOTES = 2_000;

  /** Samples on one page of the list. */
  public static final int PAGE = 30;

  /** Characters of a search. */
  public static final int SEARCH = 100;

  private SampleLimits() {}
}
