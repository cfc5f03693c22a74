package club.emberwell.search.query;

import java.time.Duration;

/** Every limit and default of this package in one place. */
public final class SearchLimits {
  /** Longest text of the search box, in characters. */
  public static final int TEXT = 200;

  /** Words of the text that are looked for; further ones are left out. */
  public static final int WORDS = 12;

  /** Most chosen values of one facet. */
  public static final int CHOSEN = 50;

  /** Longest facet value, in characters. */
  public static final int VALUE = 120;

  /** Last page that is served. */
  public static final int PAGE = 1000;

  /** Most hits a page. */
  public static final int SIZE = 100;

  /** Hits a page unless asked otherwise. */
  public static final int DEFAULT_SIZE = 20;

  /** Values of one open facet (member, controller version) that are answered; the rest counted. */
  public static final int FACET_VALUES = 100;

  /** Dictionary words one typed word may stand for by its beginning or by a typo. */
  public static final int EXPANSIONS = 50;

  /** A typo is looked for in words of at least this many letters. */
  public static final int TYPO_LETTERS = 4;

  /** A last word of at least this many letters may be the beginning of one. */
  public static final int BEGINNING_LETTERS = 2;

  /** Longest word that is indexed, in characters. */
  public static final int WORD = 60;

  /** Words of a report's notes that are indexed. */
  public static final int NOTE_WORDS = 2000;

  /** Things kept of recent searches; they are all dropped when the index changes. */
  public static final int KEPT = 256;

  /** Trials held by what is kept of recent searches: some 350 bytes each. */
  public static final int KEPT_TRIALS = 50_000;

  /** Reports read from the database at once while following or rebuilding. */
  public static final int BATCH = 500;

  /** Change rows read at once. */
  public static final int CHANGES = 1000;

  /** Pause between two looks at the change rows. */
  public static final Duration POLL = Duration.ofMillis(250);

  /** The index is made durable after this long or after {@link #CHANGES} changes. */
  public static final Duration COMMIT = Duration.ofSeconds(5);

  /** How long a writer waits for its own report to become findable. */
  public static final Duration OWN_REPORT = Duration.ofSeconds(3);

  /** How long a reader waits for an index that is just being opened or built. */
  public static final Duration FIRST_INDEX = Duration.ofSeconds(2);

  private SearchLimits() {}
}
