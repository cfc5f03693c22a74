package club.emberwell.grid.reading;

/**
 * The blank and how the cells lie on it; mm.
 *
 * @param cell side of a cell
 * @param gap between cells
 * @param width null = as wide as it takes
 * @param height null = as high as it takes
 * @param diameter null = flat
 * @param rotary whether a round one turns under the beam
 */
public record Piece(
    double cell, double gap, Double width, Double height, Double diameter, boolean rotary) {}
