package club.emberwell.grid;

import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.quantity.NumberStyle;
import java.util.UUID;

/**
 * A grid on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one grid
 * @param style how the writer writes numbers; ANY for the API
 */
public record GridPosting(UUID id, WrittenGrid written, NumberStyle style) {}
