package club.emberwell.eyewear;

/** Every limit of a pair of glasses. */
public final class EyewearLimits {
  public static final int PER_MEMBER = 100;

  public static final int NAME = 80;

  /** Characters of everything that is printed on one pair. */
  public static final int MARKING = 2_000;

  /** Lines of it; no lens has room for more. */
  public static final int LINES = 20;

  public static final int NOTES = 2_000;

  private EyewearLimits() {}
}
