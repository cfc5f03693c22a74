package club.emberwell.report;

import club.emberwell.entry.Origin;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.report.reading.WrittenReport;
import java.time.Instant;
import java.util.UUID;

/**
 * An entry on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one report
 * @param style how the writer writes numbers; ANY for the API
 * @param origin where it was made
 * @param at when it was made, null = now
 * @param askFirst true: implausible values must be confirmed before anything is stored
 */
public record Posting(
    UUID id,
    WrittenReport written,
    NumberStyle style,
    Origin origin,
    Instant at,
    boolean askFirst) {
  /** As the API posts: warnings come back with the stored report. */
  public static Posting ofApi(UUID id, WrittenReport written) {
    return new Posting(id, written, NumberStyle.ANY, Origin.HERE, null, false);
  }

  /** As a page posts: implausible values are shown first. */
  public static Posting ofPage(UUID id, WrittenReport written, NumberStyle style) {
    return new Posting(id, written, style, Origin.HERE, null, true);
  }

  /** The same way in for other words. */
  public Posting with(WrittenReport other) {
    return new Posting(id, other, style, origin, at, askFirst);
  }
}
