package club.emberwell.talk;

/** Why there is another version of an entry. */
public enum TalkAction {
  POSTED("posted", "Posted"),
  EDITED("edited", "Edited"),
  ACCEPTED("accepted", "Answer accepted"),
  WITHDRAWN("withdrawn", "Withdrawn"),
  HELD("held", "Held"),
  REMOVED("removed", "Removed"),
  RESTORED("restored", "Restored");

  private final String code;
  private final String label;

  TalkAction(String code, String label) {
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
