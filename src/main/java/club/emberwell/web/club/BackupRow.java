package club.emberwell.web.club;

import club.emberwell.desk.home.DeskHome;
import club.emberwell.keep.KnownBackup;
import club.emberwell.keep.Trial;
import club.emberwell.web.frame.FileSize;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;

/**
 * A kept backup as its owner sees it.
 *
 * @param ago how long
 * @param here whether this machine can verify and send it
 */
@SuppressWarnings("RecordComponentNumber") // what its card says
record BackupRow(
    UUID id,
    Instant at,
    String ago,
    String cause,
    String size,
    String version,
    Place place,
    boolean here,
    boolean damaged,
    boolean verifying,
    Verdict verdict) {

  /** Where the file lies. */
  record Place(String node, String path) {}

  /**
   * What came of verifying it: words round a moment.
   *
   * @param at null where it was never verified
   */
  record Verdict(String before, Instant at, String after) {
    static Verdict of(Trial trial) {
      if (trial == null) {
        return new Verdict("Not verified yet.", null, "");
      }
      return switch (trial.outcome()) {
        case RUNNING -> new Verdict("Being verified since", trial.at(), ".");
        case GOOD -> new Verdict("Verified", trial.at(), ": it can be restored.");
        case DAMAGED -> new Verdict("Damaged, found", trial.at(), ". " + trial.says());
        case FAILED -> new Verdict("Could not be verified", trial.at(), ". " + trial.says());
      };
    }
  }

  static BackupRow of(KnownBackup kept, Instant now) {
    KnownBackup.ArchiveFile file = kept.file();
    return new BackupRow(
        kept.id(),
        file.madeAt(),
        DeskHome.said(Duration.between(file.madeAt(), now)) + " ago",
        kept.cause().label(),
        FileSize.of(file.bytes()),
        "%s, tables %d".formatted(file.program(), file.tables()),
        new Place(kept.node(), file.path().toString()),
        file.isHere(),
        !kept.isGood(),
        kept.trial() != null && kept.trial().outcome() == Trial.Outcome.RUNNING,
        Verdict.of(kept.trial()));
  }

  /** Its page. */
  public String getHref() {
    return BackupPages.PATH + "/" + id;
  }
}
