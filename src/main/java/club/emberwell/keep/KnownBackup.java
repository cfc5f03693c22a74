package club.emberwell.keep;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.UUID;

/**
 * A backup that is being made, that lies somewhere, or that came to nothing.
 *
 * @param node on which machine
 * @param endedAt null while it is being made
 * @param failure why there is none; null where there is, or may be
 * @param file null where there is none
 * @param trial the last one; null where it was never tried
 */
@SuppressWarnings("RecordComponentNumber") // a row of the table
public record KnownBackup(
    UUID id,
    BackupCause cause,
    BackupState state,
    String node,
    Instant startedAt,
    Instant endedAt,
    String failure,
    ArchiveFile file,
    Trial trial) {

  /**
   * The file of a backup.
   *
   * @param path on its node
   * @param madeAt when its snapshot was taken
   * @param program the version that wrote it
   * @param tables the version of its tables
   */
  public record ArchiveFile(
      String name,
      Path path,
      long bytes,
      Instant madeAt,
      String program,
      int tables,
      Instant seenAt) {

    /** Whether it lies on this node. */
    public boolean isHere() {
      return Files.isRegularFile(path);
    }
  }

  public boolean isKept() {
    return state == BackupState.KEPT;
  }

  /** Whether one can count on it, as far as is known. */
  public boolean isGood() {
    return isKept() && (trial == null || trial.outcome() != Trial.Outcome.DAMAGED);
  }
}
