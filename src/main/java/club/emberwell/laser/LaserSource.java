package club.emberwell.laser;

/**
 * What makes the light. The wavelength is always stored beside it: the source never implies more.
 */
public enum LaserSource {
  CO2("co2", "CO2"),
  DIODE("diode", "Diode"),
  FIBRE("fibre", "Fibre"),
  GREEN("green", "Green"),
  UV("uv", "UV"),
  INFRARED("infrared", "Infrared");

  private final String code;
  private final String label;

  LaserSource(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /** The word in the API and in addresses. */
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }
}
