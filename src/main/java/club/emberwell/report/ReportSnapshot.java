package club.emberwell.report;

import club.emberwell.entry.EntryState;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.member.Licence;
import club.emberwell.report.photo.Photo;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.report.reading.Work;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A report as interpreted, whole and detached: what the index, the ranges and the pages read.
 *
 * @param repeatOf the report it repeats, or null
 */
public record ReportSnapshot(
    Standing standing,
    Author author,
    Burner machine,
    Work work,
    List<TrialSnapshot> trials,
    UUID repeatOf,
    Beside beside) {
  /**
   * Which report in which state.
   *
   * @param number small integer identity, for columns
   * @param licence under which it may be used
   */
  public record Standing(
      UUID id,
      long number,
      int version,
      EntryState state,
      Licence licence,
      Instant createdAt,
      Instant updatedAt) {}

  /**
   * Who made it.
   *
   * @param number small integer identity, for columns
   */
  public record Author(UUID id, long number, String handle) {}

  /**
   * What it was made on, as it was then.
   *
   * @param id null where the laser is described in the report only
   * @param number small integer identity, 0 where there is no id
   * @param name null where there is no id
   * @param model what its maker calls it now, null where nobody said
   */
  public record Burner(UUID id, long number, String name, String model, Laser laser) {}

  /**
   * What others see beside it.
   *
   * @param photos how many pictures it carries
   * @param photo the first of them, or null
   * @param comments how many stand under it
   */
  public record Beside(int photos, Photo photo, int comments) {
    public static final Beside NOTHING = new Beside(0, null, 0);
  }

  public UUID id() {
    return standing.id();
  }

  public long number() {
    return standing.number();
  }

  public int version() {
    return standing.version();
  }

  public EntryState state() {
    return standing.state();
  }

  public Instant createdAt() {
    return standing.createdAt();
  }

  public Instant updatedAt() {
    return standing.updatedAt();
  }

  public Laser laser() {
    return machine.laser();
  }

  public int photos() {
    return beside.photos();
  }

  public Process process() {
    return work.process();
  }
}
