package club.emberwell.desk;

import java.time.Instant;

/**
 * One line of the log.
 *
 * @param who name at that time, or of a rule
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
    String detail) {}
