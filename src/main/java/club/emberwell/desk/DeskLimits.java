package club.emberwell.desk;

import java.time.Duration;

/** Every limit of the desk, in one place. */
public final class DeskLimits {
  /** Rows of a list on its own page. */
  public static final int PAGE = 30;

  /** Rows of each list on the first screen. */
  public static final int HOME = 6;

  /** Things that wait on the first screen. */
  public static final int TASKS = 10;

  /** Of each kind so many are looked at for what waits next. */
  public static final int TASKS_READ = 1000;

  /** Notes of one rule about one member that are shown and decided together. */
  public static final int GROUP = 200;

  /** Counts go no further; one more stands for "more than that". */
  public static final int COUNT = 99;

  public static final int REASON = 1000;
  public static final int NOTE = 500;

  /** Flags one member may have open at a time. */
  public static final int OPEN_FLAGS = 20;

  /** Caution texts one member may have waiting at a time. */
  public static final int OPEN_PROPOSALS = 10;

  /** Flags one member may raise in {@link #FLAG_WINDOW}. */
  public static final int FLAGS = 40;

  public static final Duration FLAG_WINDOW = Duration.ofDays(1);

  /** So long an answer to a flag stands in the inbox. */
  public static final Duration ANSWERED = Duration.ofDays(30);

  /** Largest number of first entries that can be made to wait. */
  public static final int FIRST_LOOK_MOST = 100;

  /** Change rows held against the rules in one run. */
  public static final int RULE_RUN = 200;

  /** Steps of an undo that are done while somebody waits; the rest follows in the background. */
  public static final int UNDO_AT_ONCE = 100;

  /** Steps of an undo in one go of the background. */
  public static final int UNDO_BATCH = 200;

  /** Steps an undo shows before it is confirmed. */
  public static final int UNDO_SHOWN = 50;

  /** Lines of the log on a page. */
  public static final int AUDIT_PAGE = 50;

  /** Lines of the log read at once for an export. */
  public static final int AUDIT_BATCH = 1000;

  /** Longest word a filter of the log takes. */
  public static final int FILTER = 120;

  private DeskLimits() {}
}
