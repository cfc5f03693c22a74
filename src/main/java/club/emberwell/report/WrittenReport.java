package club.emberwell.report;

import club.emberwell.quantity.WrittenQuantity;
import java.util.List;
import java.util.UUID;

/**
 * A report exactly as it came in; kept for ever. Interpretation is a pure function of it.
 *
 * @param machine a machine of the author's, or null with {@code laser} given
 * @param trials one for a plain report, many for a grid
 * @param repeatOf the report somebody tried again, or null
 * @param confirmed pointers of implausible values the author said are meant
 */
public record WrittenReport(
    UUID machine,
    WrittenLaser laser,
    String material,
    String coating,
    String colour,
    WrittenQuantity thickness,
    String process,
    List<WrittenTrial> trials,
    String notes,
    String lot,
    String controllerVersion,
    UUID repeatOf,
    List<String> confirmed) {
  /** The same entry with other pointers confirmed. */
  public WrittenReport withConfirmed(List<String> pointers) {
    return new WrittenReport(
        machine,
        laser,
        material,
        coating,
        colour,
        thickness,
        process,
        trials,
        notes,
        lot,
        controllerVersion,
        repeatOf,
        pointers);
  }
}
