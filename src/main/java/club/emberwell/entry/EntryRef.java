package club.emberwell.entry;

import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryUnknown;
import java.util.UUID;

/** Which entry of which kind. */
public record EntryRef(EntryKind kind, UUID id) {
  /**
   * As it stands in an address of what others may see.
   *
   * @throws EntryUnknown where there is no such kind
   */
  public static EntryRef of(String kind, UUID id) {
    return new EntryRef(
        Coded.of(EntryKind.class, kind)
            .filter(found -> !found.isPrivate())
            .orElseThrow(() -> new EntryUnknown("kind of entry")),
        id);
  }
}
