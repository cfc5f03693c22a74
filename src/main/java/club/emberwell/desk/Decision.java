package club.emberwell.desk;

import java.time.Instant;
import java.util.UUID;

/**
 * What was decided about an item.
 *
 * @param by name of the moderator, or of the rule
 * @param item its words, shortened
 */
public record Decision(
    long number,
    ItemRef ref,
    UUID author,
    String by,
    String rule,
    Action action,
    String reason,
    Instant at,
    String item,
    UUID parent) {

  /** Where the item is read. */
  public String path() {
    return new Item(ref, author, "", item, "", at, parent).path();
  }

  /** In the past tense, for the author. */
  public String said() {
    return switch (action) {
      case APPROVE -> "looked at and let appear";
      case HOLD -> "held until something is settled";
      case REMOVE -> "removed";
      case RESTORE -> "restored";
    };
  }
}
