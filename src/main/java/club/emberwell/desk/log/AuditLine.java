package club.emberwell.desk.log;

import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Coded;
import java.time.Instant;
import java.util.UUID;

/**
 * One line of the log.
 *
 * @param doer who did it
 * @param detail JSON
 */
public record AuditLine(
    long seq,
    Instant at,
    Doer doer,
    String action,
    String entity,
    String entityId,
    String reason,
    String detail) {
  /**
   * Who did something.
   *
   * @param member null where a rule or the operator did
   * @param name of the member, {@code rule} with the code of a rule, or {@code the operator}
   */
  public record Doer(UUID member, String name) {
    private static final String RULE = "rule ";

    /** Code of the rule that did it, or null. */
    public String rule() {
      return member == null && name.startsWith(RULE) ? name.substring(RULE.length()) : null;
    }
  }

  public String who() {
    return doer.name();
  }

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
