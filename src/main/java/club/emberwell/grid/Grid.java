package club.emberwell.grid;

import club.emberwell.entry.Entry;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.laser.Laser;
import club.emberwell.quantity.NumberStyle;
import java.util.UUID;

/**
 * A stored test grid, detached.
 *
 * @param written both axes with their values
 * @param style by which the written numbers were read
 * @param laser as it was when the grid was planned
 * @param report that holds its results, null = none yet
 */
public record Grid(Entry entry, WrittenGrid written, NumberStyle style, Laser laser, UUID report) {
  public UUID id() {
    return entry.id();
  }

  public int version() {
    return entry.version();
  }

  public String name() {
    return entry.title();
  }
}
