package club.emberwell.keep;

import static org.awaitility.Awaitility.await;

import java.time.Duration;

/** A backup for tests of other packages. */
public final class MadeNow {
  /** Twice the silence after which work counts as broken off. */
  private static final Duration PATIENCE = StoredBackups.SILENCE.multipliedBy(2);

  private MadeNow() {}

  /** Makes one by hand, and comes back when it is kept. */
  public static void byHand(BackupWork work) {
    work.claim(BackupCause.BY_HAND).flatMap(id -> work.make(id, BackupCause.BY_HAND)).orElseThrow();
  }

  /** Comes back when nothing is made and nothing is tried. */
  public static void awaitRest(Backups backups) {
    await()
        .atMost(PATIENCE)
        .until(() -> backups.overview().all().stream().noneMatch(MadeNow::isAtWork));
  }

  private static boolean isAtWork(KnownBackup one) {
    return one.state() == BackupState.RUNNING
        || one.trial() != null && one.trial().outcome() == Trial.Outcome.RUNNING;
  }
}
