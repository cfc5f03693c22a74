package club.emberwell.exchange;

import club.emberwell.report.reading.WrittenReport;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenTrial;
import club.emberwell.report.reading.WrittenWork;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * One line of {@code reports.jsonl}: a report in the shape of the API with who, when and on which
 * machine by name.
 *
 * @param repeatOf the report of somebody else that it tries again, or null
 */
record ScenarioReport(
    UUID id,
    UUID repeatOf,
    String by,
    Instant at,
    String machine,
    @JsonUnwrapped WrittenWork work,
    @JsonUnwrapped Tried tried,
    @JsonUnwrapped Fate fate) {
  /** Several trials, or what is said of the only one. */
  record Tried(
      List<WrittenTrial> trials,
      WrittenSettings settings,
      String effect,
      Integer quality,
      List<String> defects) {
    List<WrittenTrial> all() {
      return trials != null
          ? trials
          : List.of(
              new WrittenTrial(
                  null, null, settings, effect, quality, defects == null ? List.of() : defects));
    }
  }

  /**
   * What becomes of it.
   *
   * @param withdrawn why its author takes it back again, or null
   * @param expect {@code refused} where the checks must not let it in, else null
   * @param why it must be refused, or null
   * @param oddity what is wrong with it on purpose, or null
   * @param picture what is drawn of it, or null
   */
  record Fate(
      String withdrawn, String expect, String why, String oddity, ScenarioPicture picture) {}

  WrittenReport written(UUID machineId) {
    return new WrittenReport(machineId, null, work, tried.all(), repeatOf, List.of());
  }

  boolean mustBeRefused() {
    return "refused".equals(fate.expect());
  }

  boolean isTakenBack() {
    return fate.withdrawn() != null;
  }
}
