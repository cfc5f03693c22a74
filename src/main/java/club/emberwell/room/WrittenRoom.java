package club.emberwell.room;

import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A room exactly as its owner wrote it down.
 *
 * @param carried code of what is in the air, see {@code Ventilation.Carried}
 * @param machines of the owner that stand in it
 * @param checks those that differ from the usual ones
 * @param lines of the owner's own, to go through before each job here
 */
public record WrittenRoom(
    @Nullable String name,
    @JsonUnwrapped Size size,
    @JsonUnwrapped Air air,
    @Nullable List<UUID> machines,
    @Nullable List<Check> checks,
    @Nullable List<String> lines,
    @Nullable String notes) {
  public WrittenRoom {
    size = size == null ? Size.NONE : size;
    air = air == null ? Air.NONE : air;
    machines = machines == null ? List.of() : List.copyOf(machines);
    checks = checks == null ? List.of() : List.copyOf(checks);
    // none are written like rooms were before there were lines: the same words stay the same
    lines = lines == null || lines.isEmpty() ? null : List.copyOf(lines);
  }

  /** How large it is: its volume, or its three sides. */
  public record Size(
      @Nullable WrittenQuantity volume,
      @Nullable WrittenQuantity length,
      @Nullable WrittenQuantity width,
      @Nullable WrittenQuantity height) {
    static final Size NONE = new Size(null, null, null, null);
  }

  /**
   * What moves its air.
   *
   * @param flow that leaves the building
   * @param duct inside diameter
   * @param openingWidth of where air comes in again
   */
  public record Air(
      @Nullable WrittenQuantity flow,
      @Nullable WrittenQuantity duct,
      @Nullable String carried,
      @Nullable WrittenQuantity openingWidth,
      @Nullable WrittenQuantity openingHeight) {
    static final Air NONE = new Air(null, null, null, null, null);
  }

  /**
   * A thing that is checked.
   *
   * @param check code of it
   * @param here false where there is none in this room; missing = there is one
   * @param everyDays between two checks; missing = the usual
   * @param lastOn when it was last checked, ISO 8601; missing = never yet
   */
  public record Check(
      @Nullable String check,
      @Nullable Boolean here,
      @Nullable Integer everyDays,
      @Nullable String lastOn) {}

  /** The same with other checks. */
  WrittenRoom with(List<Check> others) {
    return new WrittenRoom(name, size, air, machines, others, lines, notes);
  }
}
