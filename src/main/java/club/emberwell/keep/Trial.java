package club.emberwell.keep;

import club.emberwell.remark.Coded;
import java.time.Instant;

/**
 * A try whether a backup can be brought back: every sum, every table, beside the club's own.
 *
 * @param at when it ended; while it runs, when it began
 * @param says why it went as it did, in a sentence; null where all is well
 */
public record Trial(Outcome outcome, Instant at, String says) {
  /** What came of it. */
  public enum Outcome implements Coded {
    /** It is being tried. */
    RUNNING("running"),
    /** All sums are right, and each table came back as it was. */
    GOOD("good"),
    /** It cannot be brought back. */
    DAMAGED("damaged"),
    /** It could not be tried; that says nothing about the backup. */
    FAILED("failed");

    private final String code;

    Outcome(String code) {
      this.code = code;
    }

    @Override
    public String code() {
      return code;
    }
  }

  static Outcome outcome(KeepRefused refused) {
    return switch (refused.why()) {
      case DAMAGED, DIFFERS -> Outcome.DAMAGED;
      case NEWER, NOT_EMPTY, IN_USE, DATABASE, FILE -> Outcome.FAILED;
    };
  }
}
