package club.emberwell.tag;

import club.emberwell.entry.EntryEntity;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import java.util.UUID;

/**
 * What a tag leads to.
 *
 * @param id of the entry
 * @param author who may see it where it is private
 */
public record Tagged(TagCode code, EntryKind kind, UUID id, UUID author, EntryState state) {
  static Tagged of(TagCode code, EntryEntity entry) {
    return new Tagged(code, entry.kind(), entry.id(), entry.memberId(), entry.state());
  }

  /** Where its author reads it: a path of this server. */
  public String path() {
    return kind.path(id, null);
  }
}
