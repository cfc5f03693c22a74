package club.emberwell.grid.reading;

/**
 * The settings that differ from cell to cell, as typed.
 *
 * @param across the columns, null = as usual
 * @param down the rows, null = as usual
 * @param resolution wanted ratio between neighbouring doses, null = the usual one
 * @param most cells there may be, null = as many as it takes
 */
public record WrittenAxes(WrittenAxis across, WrittenAxis down, Double resolution, Integer most) {
  public static final WrittenAxes USUAL = new WrittenAxes(null, null, null, null);

  /**
   * Axes with their values: as they were typed, else as they were planned.
   *
   * @param typed or null
   */
  public static WrittenAxes of(WrittenAxes typed, Axis across, Axis down) {
    WrittenAxes said = typed == null ? USUAL : typed;
    return new WrittenAxes(
        across.written(said.across()), down.written(said.down()), said.resolution(), said.most());
  }
}
