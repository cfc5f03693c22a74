package club.emberwell.laser;

/** The one judgement every trial carries. */
public enum Effect {
  TOO_LITTLE("too-little", "Too little"),
  RIGHT("right", "Right"),
  TOO_MUCH("too-much", "Too much");

  private final String code;
  private final String label;

  Effect(String code, String label) {
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
