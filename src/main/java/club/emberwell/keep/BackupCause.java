package club.emberwell.keep;

import club.emberwell.remark.Coded;

/** Why a backup was made. */
public enum BackupCause implements Coded {
  /** Its time of day had come. */
  SCHEDULE("schedule", "by the schedule"),
  /** An owner pressed the button, or somebody typed the verb. */
  BY_HAND("by-hand", "by hand"),
  /** A new version was about to change the tables. */
  BEFORE_UPGRADE("before-upgrade", "before an upgrade");

  private final String code;
  private final String label;

  BackupCause(String code, String label) {
    this.code = code;
    this.label = label;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }
}
