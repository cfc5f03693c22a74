package club.emberwell.report;

import club.emberwell.quantity.Bounds;
import java.time.Duration;

/**
 * Every limit of a report, in one place. Bounds are inclusive, in canonical units, and far outside
 * the plausible: whatever lies beyond cannot be meant. What is merely unusual is only warned of.
 */
public final class ReportLimits {
  /** Longest word for a material, coating or colour, in characters. */
  public static final int WORDS = 120;

  public static final int NOTES = 4000;
  public static final int LOT = 80;
  public static final int CONTROLLER_VERSION = 80;
  public static final int REASON = 1000;

  /** Trials in one report: a grid of 20 by 20. */
  public static final int TRIALS = 400;

  public static final int DEFECTS = 10;

  /** Highest row or column of a grid. */
  public static final int GRID_SIDE = 400;

  public static final int BEST_QUALITY = 5;

  public static final Bounds THICKNESS_MM = new Bounds(0.000_1, 10_000);

  /** The same words by the same member within this time look like a slip. */
  public static final Duration DUPLICATE_WITHIN = Duration.ofDays(1);

  public static final int PHOTOS = 6;

  /** Bytes of stored pictures one member may own. */
  public static final long PHOTO_BYTES_PER_MEMBER = 500L * 1024 * 1024;

  /** Bytes of an uploaded file. */
  public static final int PHOTO_UPLOAD = 10 * 1024 * 1024;

  /** Width times height of an uploaded picture, checked before it is decoded. */
  public static final long PHOTO_PIXELS = 40_000_000;

  /** Longer side of the kept picture and of its thumbnail, pixels. */
  public static final int PHOTO_SIDE = 1600;

  public static final int THUMB_SIDE = 400;

  /** Reports read again in one transaction. */
  public static final int READ_AGAIN_BATCH = 200;

  /** Repeats named with a report. */
  public static final int REPEATS_SHOWN = 100;

  /** Own reports on one page of the bench. */
  public static final int OWN_PAGE = 20;

  private ReportLimits() {}
}
