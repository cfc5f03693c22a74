package club.emberwell.exchange;

import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.Particulars;
import club.emberwell.report.WrittenReport;
import club.emberwell.report.WrittenSettings;
import club.emberwell.report.WrittenTrial;
import club.emberwell.report.WrittenWork;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * One line of {@code reports.jsonl}: a report in the shape of the API with who, when and on which
 * machine by name.
 *
 * @param withdrawn why its author takes it back again, or null
 * @param expect {@code refused} where the checks must not let it in, else null
 * @param why it must be refused, or null
 * @param oddity what is wrong with it on purpose, or null
 */
record ScenarioReport(
    UUID id,
    String by,
    LocalDate at,
    String machine,
    String material,
    String coating,
    String colour,
    WrittenQuantity thickness,
    String process,
    WrittenSettings settings,
    List<WrittenTrial> trials,
    String effect,
    Integer quality,
    List<String> defects,
    String notes,
    String lot,
    String controllerVersion,
    String withdrawn,
    String expect,
    String why,
    String oddity) {

  WrittenReport written(UUID machineId) {
    List<WrittenTrial> all =
        trials != null
            ? trials
            : List.of(
                new WrittenTrial(
                    null, null, settings, effect, quality, defects == null ? List.of() : defects));
    return new WrittenReport(
        machineId,
        null,
        new WrittenWork(process, material, coating, colour, thickness),
        all,
        new Particulars(notes, lot, controllerVersion),
        null,
        List.of());
  }

  boolean mustBeRefused() {
    return "refused".equals(expect);
  }
}
