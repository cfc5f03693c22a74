package club.emberwell.grid;

import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.quantity.NumberStyle;
import java.time.Instant;
import java.util.UUID;

/**
 * A grid on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one grid
 * @param style how the writer writes numbers; ANY for the API
 * @param at when it was planned, null = now
 */
public record GridPosting(UUID id, WrittenGrid written, NumberStyle style, Instant at) {
  /** Planned now. */
  public GridPosting(UUID id, WrittenGrid written, NumberStyle style) {
    this(id, written, style, null);
  }
}
