package club.emberwell.grid.reading;

/**
 * Which cells are wanted.
 *
 * @param across null = as usual for the work
 * @param down null = as usual for the work
 * @param resolution ratio between neighbouring doses
 * @param most cells there may be
 */
public record Wish(Axis across, Axis down, double resolution, int most) {
  /** Whether both axes have their values. */
  public boolean settled() {
    return across != null && down != null && !across.isOpen() && !down.isOpen();
  }
}
