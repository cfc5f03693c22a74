package club.emberwell.talk;

import java.time.Duration;

/** Every limit of talk and watches, in one place. */
public final class TalkLimits {
  public static final int TITLE = 150;

  /** Characters of a question, an answer or a notice. */
  public static final int TEXT = 10_000;

  /** Characters of a comment. */
  public static final int COMMENT = 1000;

  /** Shorter ones help nobody. */
  public static final int TITLE_LEAST = 8;

  public static final int MACHINE_MODEL = 80;
  public static final int CONTROLLER_VERSION = 80;

  /** Entries one member may write in {@link #PACE_WINDOW}. */
  public static final int PACE = 60;

  public static final Duration PACE_WINDOW = Duration.ofDays(1);

  /** Questions or notices a page. */
  public static final int PAGE = 20;

  /** Answers a page of a question. */
  public static final int ANSWERS = 30;

  /** Comments a page of a report. */
  public static final int COMMENTS = 20;

  /** Shown beside a range, a report or a text that is being typed. */
  public static final int BESIDE = 5;

  /** Nesting of quotes, lists and emphasis in a text. */
  public static final int NESTING = 20;

  public static final int WATCH_LABEL = 80;

  /** Characters of a kept search. */
  public static final int WATCH_QUERY = 1500;

  public static final int WATCHES = 25;

  /** Entries of one page of the inbox. */
  public static final int INBOX_PAGE = 30;

  /** The unread count goes no further. */
  public static final int UNREAD = 99;

  /** Entries of a feed. */
  public static final int FEED = 40;

  /** Entries named in one mail. */
  public static final int DIGEST = 30;

  /** Members who get their mail in one run. */
  public static final int DIGEST_RUN = 200;

  public static final Duration DIGEST_EVERY = Duration.ofDays(1);

  /** Change rows held against the watches in one run. */
  public static final int MATCH_RUN = 300;

  /** Watches read at once in a run. */
  public static final int WATCH_BATCH = 1000;

  /** What was found longer ago leaves the inbox. */
  public static final Duration INBOX_KEPT = Duration.ofDays(180);

  private TalkLimits() {}
}
