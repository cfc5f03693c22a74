package club.emberwell.laser;

/** By pulse duration, after the letters D, I, R, M of EN 207 (fs split off at 10 ps). */
public enum Regime {
  CW("cw", "continuous"),
  LONG("long", "long pulse"),
  NS("ns", "nanosecond"),
  PS("ps", "picosecond"),
  FS("fs", "femtosecond");

  private final String code;
  private final String label;

  Regime(String code, String label) {
    this.code = code;
    this.label = label;
  }

  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  public boolean pulsed() {
    return this != CW;
  }
}
