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
 * @param verdict what came of verifying it, beginning with a small letter; ends before the moment
 * @param verdictAt null where it was never verified
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
   * What came of verifying it.
   *
   * @param words up to the moment
   * @param says why, in a sentence; null where there is no more to say
   */
  record Verdict(String words, Instant at, String says) {
    static Verdict of(Trial trial) {
      return trial == null
          ? new Verdict("Not verified yet", null, null)
          : new Verdict(words(trial.outcome()), trial.at(), trial.says());
    }

    private static String words(Trial.Outcome outcome) {
      return switch (outcome) {
        case RUNNING -> "Being verified since";
        case GOOD -> "Verified, it can be restored:";
        case DAMAGED -> "Damaged, use another one:";
        case FAILED -> "Could not be verified:";
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
