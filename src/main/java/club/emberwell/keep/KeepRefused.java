package club.emberwell.keep;

/**
 * A backup or a restore cannot go on; the message is one sentence that says what to do about it.
 */
public final class KeepRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /** What stands in the way. */
  public enum Why {
    /** The archive is damaged, or none of ours. */
    DAMAGED,
    /** The archive or the database was written by a newer program. */
    NEWER,
    /** What is there would be lost. */
    NOT_EMPTY,
    /** Somebody else works on the database. */
    IN_USE,
    /** The database cannot be read or written. */
    DATABASE,
    /** A file cannot be read or written. */
    FILE,
    /** What was restored is not what was kept. */
    DIFFERS
  }

  private final Why why;

  /** A refusal for a reason. */
  public KeepRefused(Why why, String sentence) {
    super(sentence);
    this.why = why;
  }

  /** A refusal caused by something deeper. */
  public KeepRefused(Why why, String sentence, Throwable cause) {
    super(sentence, cause);
    this.why = why;
  }

  /** What stands in the way. */
  public Why why() {
    return why;
  }
}
