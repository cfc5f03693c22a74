package club.emberwell.desk;

import java.time.Instant;
import java.util.UUID;

/**
 * Somebody's word that something is wrong with an item.
 *
 * @param state open, withdrawn, upheld or dismissed
 * @param outcome what the moderator said, null while open
 * @param item the item's words, shortened
 */
public record Flag(
    UUID id,
    UUID member,
    String by,
    ItemRef ref,
    FlagReason reason,
    String note,
    String state,
    Instant createdAt,
    Instant decidedAt,
    String outcome,
    String item,
    UUID parent) {

  public boolean open() {
    return "open".equals(state);
  }

  /** Where the item is read. */
  public String path() {
    return new Item(ref, member, "", item, "", createdAt, parent).path();
  }
}
