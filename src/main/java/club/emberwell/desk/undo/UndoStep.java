package club.emberwell.desk.undo;

import club.emberwell.remark.Coded;

/** One thing an undo does. */
public enum UndoStep implements Coded {
  REMOVE("remove", "Remove what was posted"),
  REVERT("revert", "Restore what was there before an edit"),
  RELEASE("release", "Restore what was held or removed"),
  HOLD("hold", "Hold what was approved"),
  FLAG("flag", "Remove a flag"),
  PROPOSAL("proposal", "Decline a proposed caution"),
  UNBAN("unban", "Lift a ban"),
  NOTE("note", "Remove a note of the rule"),
  SEEN("seen", "Lay a note aside");

  private final String code;
  private final String label;

  UndoStep(String code, String label) {
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
