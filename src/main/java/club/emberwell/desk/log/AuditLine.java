package club.emberwell.desk.log;

import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Coded;
import java.time.Instant;

/**
 * One line of the log.
 *
 * @param who name of a member, or of a rule
 * @param detail JSON
 */
public record AuditLine(
    long seq,
    Instant at,
    String who,
    String action,
    String entity,
    String entityId,
    String reason,
    String detail) {
  /** Where the desk shows what it is about; null where it has no page for that. */
  public String deskPath() {
    if (entity.equals("member")) {
      return "/desk/members/" + entityId;
    }
    return Coded.of(EntryKind.class, entity)
        .map(kind -> "/desk/items/" + entity + "/" + entityId)
        .orElse(null);
  }
}
