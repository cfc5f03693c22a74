package club.emberwell.lot;

import java.time.LocalDate;

/** Every limit of a lot. */
public final class LotLimits {
  public static final int PER_MEMBER = 1_000;

  /** Characters of a supplier, its name of the lot, a material, a coating or a colour. */
  public static final int WORDS = 80;

  public static final int NOTES = 2_000;

  /** Pieces of one delivery. */
  public static final int PIECES = 100_000;

  /** Nothing was delivered before. */
  public static final LocalDate EARLIEST = LocalDate.of(1990, 1, 1);

  /** Lots on one page of the list. */
  public static final int PAGE = 30;

  /** Lots of one supplier that are shown beside each other. */
  public static final int IN_TIME = 60;

  private LotLimits() {}
}
