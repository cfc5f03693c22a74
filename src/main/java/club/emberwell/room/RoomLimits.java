package club.emberwell.room;

import club.emberwell.quantity.Bounds;
import java.time.LocalDate;

/** Every limit of a room. Bounds are inclusive and far outside the usual. */
public final class RoomLimits {
  public static final int PER_MEMBER = 20;
  public static final int NAME = 80;
  public static final int NOTES = 2_000;

  /** Lines of one's own before a job: more are not read at the machine. */
  public static final int LINES = 10;

  /** Characters of such a line: two lines of a card. */
  public static final int LINE = 120;

  /** Machines in one room. */
  public static final int MACHINES = 50;

  public static final Bounds VOLUME_M3 = new Bounds(0.01, 1e6);
  public static final Bounds SIDE_MM = new Bounds(100, 1e6);
  public static final Bounds FLOW_M3H = new Bounds(0.01, 1e6);
  public static final Bounds DUCT_MM = new Bounds(1, 10_000);
  public static final Bounds OPENING_MM = new Bounds(1, 1e5);

  /** Days between two checks: a check every ten years is none. */
  public static final int MOST_DAYS = 3_650;

  /** Nothing was checked before. */
  public static final LocalDate EARLIEST = LocalDate.of(2000, 1, 1);

  private RoomLimits() {}
}
