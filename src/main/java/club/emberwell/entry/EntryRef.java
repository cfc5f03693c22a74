package club.emberwell.entry;

import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryUnknown;
import java.util.UUID;

/** Which report, question, answer, notice or photo. */
public record EntryRef(EntryKind kind, UUID id) {
  /**
   * As it stands in an address.
   *
   * @throws EntryUnknown where there is no such kind
   */
  public static EntryRef of(String kind, UUID id) {
    return new EntryRef(
        Coded.of(EntryKind.class, kind).orElseThrow(() -> new EntryUnknown("kind of entry")), id);
  }
}
