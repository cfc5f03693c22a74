package club.emberwell.laser;

/** How the beam gets where it should be. */
public enum Motion {
  GANTRY("gantry", "Gantry"),
  GALVO("galvo", "Galvo");

  private final String code;
  private final String label;

  Motion(String code, String label) {
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
