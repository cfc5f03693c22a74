package club.emberwell.lot.order;

import club.emberwell.quantity.Bounds;

/** Every limit of the question how many to order. */
public final class OrderLimits {
  public static final int LINES = 12;

  /** Good pieces needed in one line, and pieces for tests. */
  public static final int PIECES = 5_000;

  /** Pieces of one line that may be ordered. */
  public static final int MOST = 100_000;

  /** Pieces of a supplier's record. */
  public static final int RECORD = 1_000_000;

  /** Characters of a line's name. */
  public static final int NAME = 80;

  public static final Bounds CHANCE = new Bounds(0.5, 0.999);

  public static final double USUAL_CHANCE = 0.9;

  /** With fewer inspected lots of one's own, those that others share are counted too. */
  public static final int FEW_LOTS = 5;

  private OrderLimits() {}
}
