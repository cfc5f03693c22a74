package club.emberwell.report;

/** Why there is another version of a report. */
public enum RevisionAction {
  POSTED("posted", "Posted"),
  EDITED("edited", "Edited"),
  WITHDRAWN("withdrawn", "Withdrawn"),
  HELD("held", "Held"),
  REMOVED("removed", "Removed"),
  RESTORED("restored", "Restored"),
  PHOTO_ADDED("photo-added", "Photo added"),
  PHOTO_REMOVED("photo-removed", "Photo removed"),
  /** The words in it were filed anew, or a mended reader read it. */
  READ_AGAIN("read-again", "Read again");

  private final String code;
  private final String label;

  RevisionAction(String code, String label) {
    this.code = code;
    this.label = label;
  }

  public String code() {
    return code;
  }

  public String label() {
    return label;
  }
}
