package club.emberwell.grid.reading;

import club.emberwell.bench.WrittenLaser;
import club.emberwell.laser.Setting;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenWork;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A test grid exactly as it came in: what is burned on which machine, over which settings. Once it
 * is stored both axes have their values.
 *
 * @param name what lists call it, null = the words of its work
 * @param machine a machine of the author's, or null with {@code laser} given
 * @param settings those that stay the same in all cells; null = those of the start
 * @param axes null = both from the range
 * @param blank null = 8 mm cells on a blank of any size
 * @param timing null = what is usual for the motion
 */
public record WrittenGrid(
    @Nullable String name,
    @Nullable UUID machine,
    @Nullable WrittenLaser laser,
    @JsonUnwrapped WrittenWork work,
    @Nullable WrittenSettings settings,
    @Nullable WrittenAxes axes,
    @Nullable WrittenBlank blank,
    @Nullable WrittenTiming timing) {

  /** The same grid, its axes with their values, with these settings beside them. */
  public WrittenGrid burning(WrittenSettings others, WrittenAxes chosen) {
    return new WrittenGrid(name, machine, laser, work, others, chosen, blank, timing);
  }

  /**
   * What the laser is told in a cell of a stored grid, as written.
   *
   * @param row from 0
   * @param column from 0
   */
  public WrittenSettings cell(int row, int column) {
    return at(at(settings, axes.across(), column), axes.down(), row);
  }

  /** Whether the same tests are burned in the same places. */
  public boolean sameCells(WrittenGrid other) {
    return Objects.equals(settings, other.settings)
        && axes.across().equals(other.axes.across())
        && axes.down().equals(other.axes.down());
  }

  private static WrittenSettings at(WrittenSettings settings, WrittenAxis axis, int place) {
    Setting setting = Setting.of(axis.setting()).orElseThrow();
    return settings.with(setting, axis.value(setting, place));
  }
}
