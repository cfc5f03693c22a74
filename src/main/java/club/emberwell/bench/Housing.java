package club.emberwell.bench;

import club.emberwell.remark.Coded;

/** What stands between a machine's beam and the people round it. */
public enum Housing implements Coded {
  OPEN("open", "Open: the beam can be reached"),
  INTERLOCKED("interlocked", "Closed, and opening it stops the beam (interlock)"),
  CLOSED("closed", "Closed, without an interlock");

  private final String code;
  private final String label;

  Housing(String code, String label) {
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
