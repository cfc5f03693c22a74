package club.emberwell.desk.log;

import club.emberwell.desk.DeskAccess;
import club.emberwell.desk.DeskLimits;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import java.time.Instant;

/**
 * Which lines of the log are wanted; null = any.
 *
 * @param by name of the person, in any case of letters
 * @param from inclusive
 * @param to exclusive
 */
public record AuditFilter(
    String by, String action, String kind, String id, Instant from, Instant to) {
  public static final AuditFilter ALL = new AuditFilter(null, null, null, null, null, null);

  AuditFilter checked() {
    if (from != null && to != null && from.isAfter(to)) {
      throw new EntryRefused(RemarkId.TIME_ORDER, "/to", "The end lies before the beginning.");
    }
    return new AuditFilter(
        word("/by", by), word("/action", action), word("/kind", kind), word("/id", id), from, to);
  }

  private static String word(String pointer, String given) {
    return DeskAccess.text(pointer, given, DeskLimits.FILTER, false);
  }
}
