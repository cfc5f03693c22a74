package club.emberwell.member;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Map;

/** Writes down who did what and why. The log only grows; secrets and addresses stay out of it. */
@ApplicationScoped
public class Audit {
  private final AuditRepository entries;

  Audit(AuditRepository entries) {
    this.entries = entries;
  }

  /**
   * Adds an entry in the caller's transaction: it stands exactly if the deed does.
   *
   * @param action what was done, lower case with dashes, e.g. {@code ban}
   * @param entity the kind of thing, e.g. {@code member}
   * @param reason for the person concerned; empty where none is asked
   */
  @Transactional
  public void record(
      Actor actor,
      String action,
      String entity,
      String entityId,
      String reason,
      Map<String, Object> detail) {
    AuditEntry entry = new AuditEntry();
    entry.at = Instant.now();
    entry.memberId = actor.memberId();
    entry.action = action;
    entry.entity = entity;
    entry.entityId = entityId;
    entry.reason = reason;
    entry.detail = detail;
    entries.persist(entry);
  }
}
