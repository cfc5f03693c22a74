package club.emberwell.grid.reading;

import club.emberwell.quantity.WrittenQuantity;

/**
 * What the time to burn depends on beside the settings, as typed; null = what is usual.
 *
 * @param acceleration of the head
 * @param overscan run at either end of a line with the beam off
 */
public record WrittenTiming(WrittenQuantity acceleration, WrittenQuantity overscan) {
  public static final WrittenTiming USUAL = new WrittenTiming(null, null);
}
