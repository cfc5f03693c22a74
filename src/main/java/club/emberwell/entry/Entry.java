package club.emberwell.entry;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;

/**
 * What all kinds of entries share, detached.
 *
 * @param parent the question of an answer, the report of a photo or a comment, else null
 * @param title what lists call it
 */
public record Entry(
    EntryRef ref,
    EntryState state,
    int version,
    UUID parent,
    String title,
    Author author,
    Times times) {

  /**
   * Who wrote it.
   *
   * @param handle {@code former member} where that member was erased
   */
  public record Author(UUID id, String handle) {}

  /** When it was made and last changed. */
  public record Times(Instant created, Instant updated) {}

  public UUID id() {
    return ref.id();
  }

  public EntryKind kind() {
    return ref.kind();
  }

  /** Where people read it: a path of this server. */
  public String path() {
    return kind().path(id(), parent);
  }

  /** Its address on the desk. */
  public String deskPath() {
    return "/desk/items/" + kind().code() + "/" + id();
  }

  public Duration age(Instant now) {
    return Duration.between(times.created(), now);
  }

  public boolean live() {
    return state == EntryState.LIVE;
  }
}
