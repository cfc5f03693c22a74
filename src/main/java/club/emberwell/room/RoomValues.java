package club.emberwell.room;

import club.emberwell.laser.safety.Ventilation.Carried;
import java.util.List;
import java.util.UUID;

/**
 * What was read of a room; null where not said.
 *
 * @param checks what is checked here, in the order of {@link RoomCheck}
 * @param machines of the owner that stand in it
 * @param lines of the owner's own, to go through before each job
 */
public record RoomValues(
    String name,
    Size size,
    Air air,
    List<CheckState> checks,
    List<UUID> machines,
    List<String> lines) {
  public RoomValues {
    checks = List.copyOf(checks);
    machines = List.copyOf(machines);
    lines = List.copyOf(lines);
  }

  /**
   * How large it is.
   *
   * @param volumeM3 as said, or of the sides
   */
  public record Size(Double volumeM3, Double lengthMm, Double widthMm, Double heightMm) {}

  /** What moves its air. */
  public record Air(
      Double flowM3h,
      Double ductMm,
      Carried carried,
      Double openingWidthMm,
      Double openingHeightMm) {
    private static final double MM2_PER_M2 = 1e6;

    /** Area by which air comes in again, m2. */
    public Double openingM2() {
      return openingWidthMm == null || openingHeightMm == null
          ? null
          : openingWidthMm * openingHeightMm / MM2_PER_M2;
    }
  }
}
