package club.emberwell.desk.flag;

import club.emberwell.entry.Entry;
import java.time.Instant;
import java.util.List;

/**
 * An item with open flags.
 *
 * @param flags how many members flagged it
 * @param oldest when the first of them did
 */
public record Flagged(Entry item, int flags, List<FlagReason> reasons, Instant oldest) {
  public Flagged {
    reasons = List.copyOf(reasons);
  }

  /** True where one of the flags is an owner's to settle. */
  public boolean forOwners() {
    return reasons.stream().anyMatch(r -> r.owner() == club.emberwell.member.Role.OWNER);
  }
}
