package club.emberwell.report;

import java.time.Duration;

/** Every limit of a report but those of what it says, which the reading has. */
public final class ReportLimits {
  /** The same words by the same member within this time look like a slip. */
  public static final Duration DUPLICATE_WITHIN = Duration.ofDays(1);

  /** Of one report, question or answer. */
  public static final int PHOTOS = 6;

  /** Pictures of forms that are not stored yet, for one member. */
  public static final int PARKED = 30;

  /** As long as a form waits on a phone without a connection. */
  public static final Duration PARKED_FOR = Duration.ofDays(7);

  /** Bytes of an uploaded file. */
  public static final int PHOTO_UPLOAD = 10 * 1024 * 1024;

  /** Width times height of an uploaded picture, checked before it is decoded. */
  public static final long PHOTO_PIXELS = 40_000_000;

  /** Longer side of the kept picture and of its smaller sizes, pixels. */
  public static final int PHOTO_SIDE = 1600;

  public static final int MIDDLE_SIDE = 960;
  public static final int THUMB_SIDE = 400;

  /** Reports read again in one transaction. */
  public static final int READ_AGAIN_BATCH = 200;

  /** Repeats named with a report. */
  public static final int REPEATS_SHOWN = 100;

  /** Newest reports of a member that say which machine was used last. */
  public static final int LAST_USED = 40;

  /** Own reports on one page of the bench. */
  public static final int OWN_PAGE = 20;

  /** Reports kept in memory as they were read last. */
  static final int KEPT_SNAPSHOTS = 500;

  private ReportLimits() {}
}
