package club.emberwell.keep;

import club.emberwell.remark.Coded;

/** What became of a backup. */
public enum BackupState implements Coded {
  /** It is being made. */
  RUNNING("running"),
  /** Its file lies on some node. */
  KEPT("kept"),
  /** It could not be made. */
  FAILED("failed"),
  /** The server stopped while it was made. */
  DIED("died");

  private final String code;

  BackupState(String code) {
    this.code = code;
  }

  @Override
  public String code() {
    return code;
  }
}
