package club.emberwell.laser;

/** Whether the beam works on the way back too. */
public enum Direction {
  ONE_WAY("one-way", "One-way"),
  TWO_WAY("two-way", "Two-way");

  private final String code;
  private final String label;

  Direction(String code, String label) {
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
