package club.emberwell.hook;

import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;
import java.time.Instant;
import java.util.UUID;

/**
 * One event on its way to one webhook.
 *
 * @param number later ones have higher ones
 * @param id the header {@code webhook-id}, the same at every try
 */
public record Delivery(
    long number, UUID id, HookEvent event, Instant createdAt, Progress progress) {

  /**
   * How far it came.
   *
   * @param dueAt when the next try is due; null once it is over
   * @param endedAt null while it waits
   * @param status of the last answer; null where none came
   * @param error what went wrong at the last try, or null
   */
  public record Progress(
      State state, int tries, Instant dueAt, Instant endedAt, Integer status, String error) {}

  /** What becomes of it. */
  public enum State implements Coded {
    WAITING("waiting", "waits"),
    DONE("done", "arrived"),
    /** Given up. */
    FAILED("failed", "could not be delivered"),
    /** What it tells is no longer there, or the webhook was switched off. */
    DROPPED("dropped", "not sent");

    @EnumeratedValue private final String code;
    private final String label;

    State(String code, String label) {
      this.code = code;
      this.label = label;
    }

    @Override
    public String code() {
      return code;
    }

    public String label() {
      return label;
    }
  }
}
