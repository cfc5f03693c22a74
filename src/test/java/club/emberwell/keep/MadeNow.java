package club.emberwell.keep;

/** A backup for tests of other packages. */
public final class MadeNow {
  private MadeNow() {}

  /** Makes one by hand, and comes back when it is kept. */
  public static void byHand(BackupWork work) {
    work.claim(BackupCause.BY_HAND).flatMap(id -> work.make(id, BackupCause.BY_HAND)).orElseThrow();
  }

  /** Comes back when nothing is made and nothing is tried. */
  public static void awaitRest(Backups backups) throws InterruptedException {
    while (backups.overview().all().stream().anyMatch(MadeNow::isAtWork)) {
      Thread.sleep(50);
    }
  }

  private static boolean isAtWork(KnownBackup one) {
    return one.state() == BackupState.RUNNING
        || one.trial() != null && one.trial().outcome() == Trial.Outcome.RUNNING;
  }
}
