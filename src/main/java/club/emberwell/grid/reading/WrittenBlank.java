package club.emberwell.grid.reading;

import club.emberwell.quantity.WrittenQuantity;

/**
 * The piece and how the cells lie on it, as typed; null = not given.
 *
 * @param cell side of a cell
 * @param gap between cells
 * @param width room on a flat piece; round one with rotary that of its unrolled side
 * @param height room on the piece, along the axis of a round one
 * @param diameter of a round piece, null = flat
 * @param rotary true where the round piece turns under the beam
 */
public record WrittenBlank(
    WrittenQuantity cell,
    WrittenQuantity gap,
    WrittenQuantity width,
    WrittenQuantity height,
    WrittenQuantity diameter,
    Boolean rotary) {
  public static final WrittenBlank USUAL = new WrittenBlank(null, null, null, null, null, null);
}
