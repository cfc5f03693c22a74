package club.emberwell.report.reading;

import club.emberwell.bench.WrittenLaser;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
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
    @JsonUnwrapped WrittenWork work,
    List<WrittenTrial> trials,
    UUID repeatOf,
    List<String> confirmed) {
  /** One trial outside a grid: its fields stand at the top of the entry. */
  public boolean plain() {
    return trials != null
        && trials.size() == 1
        && trials.get(0) != null
        && trials.get(0).row() == null
        && trials.get(0).column() == null;
  }

  /** The same entry with other pointers confirmed. */
  public WrittenReport withConfirmed(List<String> pointers) {
    return new WrittenReport(machine, laser, work, trials, repeatOf, pointers);
  }

  /** The same entry with the trials of another. */
  public WrittenReport trying(List<WrittenTrial> others) {
    return new WrittenReport(machine, laser, work, others, repeatOf, confirmed);
  }

  /** The same entry, said to be a repeat of that report. */
  public WrittenReport repeating(UUID original) {
    return new WrittenReport(machine, laser, work, trials, original, confirmed);
  }
}
