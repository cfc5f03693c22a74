package club.emberwell.entry;

import club.emberwell.quantity.NumberStyle;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * An entry that nobody else sees, out of a file of its owner's and on its way back.
 *
 * @param title what lists called it
 * @param style by which its numbers were read
 * @param written the newest words as stored JSON
 * @param past every version, the oldest first; at least one
 * @param beside what its kind keeps beside its words
 */
public record Returned(
    UUID id,
    String title,
    Instant createdAt,
    Instant updatedAt,
    NumberStyle style,
    String written,
    List<Past> past,
    Beside beside) {

  /**
   * A version it had.
   *
   * @param reason null where none was given
   * @param written null where it changed no words
   */
  public record Past(
      EntryAction action, Instant at, String reason, EntryState state, String written) {}

  /**
   * What some kinds keep beside their words; null = nothing.
   *
   * @param tag the code on its label
   * @param usedAt when its owner last said that they used it
   * @param report one of the owner's that holds its results
   * @param reports of the owner's that were posted with it
   */
  public record Beside(String tag, Instant usedAt, UUID report, List<Posted> reports) {}

  /**
   * A report that was posted with an entry.
   *
   * @param version of the entry then
   */
  public record Posted(UUID report, int version) {}
}
