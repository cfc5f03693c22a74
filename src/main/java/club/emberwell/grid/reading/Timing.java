package club.emberwell.grid.reading;

/**
 * What was said of how the head moves.
 *
 * @param acceleration mm/s2, null = what is usual
 * @param overscan mm at either end of a line, null = what it takes to reach the speed
 */
public record Timing(Double acceleration, Double overscan) {}
