package club.emberwell.desk.home;

import club.emberwell.remark.Coded;

/** What can wait for a moderator's decision, the worst first. */
public enum TaskKind implements Coded {
  FLAG("flag", "Flagged"),
  ENTRY("entry", "to approve"),
  REQUEST("request", "Request to join", "Requests to join"),
  PROPOSAL("proposal", "Proposed caution text"),
  REMOVAL("removal", "Caution to remove"),
  NOTES("notes", "Noticed by a rule"),
  WORD("word", "New word");

  private final String code;
  private final String label;
  private final String several;

  TaskKind(String code, String label) {
    this(code, label, label);
  }

  TaskKind(String code, String label, String several) {
    this.code = code;
    this.label = label;
    this.several = several;
  }

  @Override
  public String code() {
    return code;
  }

  /** What stands on a line of the desk; of a flag and an entry, beside the kind of entry. */
  public String label(long count) {
    return count == 1 ? label : several;
  }

  /** How bad it may be, 0 the worst: behind all that flags can come to. */
  int rank() {
    return ordinal() + 1;
  }
}
