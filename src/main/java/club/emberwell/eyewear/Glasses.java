package club.emberwell.eyewear;

import club.emberwell.entry.Entry;
import club.emberwell.laser.safety.Protection;
import club.emberwell.remark.Remark;
import java.util.List;
import java.util.UUID;

/**
 * A pair of glasses as it stands, detached.
 *
 * @param printed what its marking means
 * @param remarks what of it was left out
 */
public record Glasses(
    Entry entry, WrittenGlasses written, List<Protection> printed, List<Remark> remarks) {
  public UUID id() {
    return entry.id();
  }

  public int version() {
    return entry.version();
  }

  public String name() {
    return written.name();
  }
}
