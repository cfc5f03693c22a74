package club.emberwell.desk.undo;

import club.emberwell.remark.Coded;

/** One thing an undo does. */
public enum UndoStep implements Coded {
  REMOVE("remove", "Remove what was posted"),
  REVERT("revert", "Bring back what stood before a change"),
  RELEASE("release", "Restore what was held or removed"),
  HOLD("hold", "Hold what was let appear, for another look"),
  FLAG("flag", "Drop a flag"),
  PROPOSAL("proposal", "Decline a proposed caution"),
  UNBAN("unban", "Let a banned member in again"),
  NOTE("note", "Drop a note of the rule");

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
