package club.emberwell.catalog.store;

import club.emberwell.catalog.TermKind;
import java.time.Instant;
import java.util.UUID;

/**
 * A text that matched nothing or several things.
 *
 * @param written as it was first written
 * @param count how often it, or a spelling that folds alike, was written
 * @param state {@code waiting}, {@code filed} or {@code dismissed}
 * @param filedTo slug of the term, where filed
 */
public record Unfiled(
    UUID id,
    TermKind kind,
    String written,
    int count,
    Instant firstSeen,
    Instant lastSeen,
    String state,
    String filedTo) {
  public static final String WAITING = "waiting";
  public static final String FILED = "filed";
  public static final String DISMISSED = "dismissed";
}
