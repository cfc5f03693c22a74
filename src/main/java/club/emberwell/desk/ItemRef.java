package club.emberwell.desk;

import club.emberwell.remark.EntryUnknown;
import java.util.UUID;

/** Which report, question, answer, notice or photo. */
public record ItemRef(ItemKind kind, UUID id) {
  /**
   * As it stands in an address.
   *
   * @throws EntryUnknown where there is no such kind
   */
  public static ItemRef of(String kind, UUID id) {
    return new ItemRef(ItemKind.of(kind).orElseThrow(() -> new EntryUnknown("kind of entry")), id);
  }
}
