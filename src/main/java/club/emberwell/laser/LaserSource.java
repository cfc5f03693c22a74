package club.emberwell.laser;

import club.emberwell.remark.Coded;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.Locale;
import java.util.Optional;

/**
 * What makes the light. The wavelength is always stored beside it: the source never implies more.
 */
public enum LaserSource implements Coded {
  CO2("co2", "CO2", 9000, 11000),
  DIODE("diode", "Diode", 400, 460),
  FIBRE("fibre", "Fibre", 1020, 1100),
  GREEN("green", "Green", 510, 550),
  UV("uv", "UV", 190, 380),
  INFRARED("infrared", "Infrared", 780, 1100);

  private final String code;
  private final String label;
  private final int fromNm;
  private final int toNm;

  LaserSource(String code, String label, int fromNm, int toNm) {
    this.code = code;
    this.label = label;
    this.fromNm = fromNm;
    this.toNm = toNm;
  }

  /** The word in the API and in addresses. */
  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** The value with this API code; spaces, case and underscores do not matter; empty if none. */
  public static Optional<LaserSource> of(String code) {
    return Codes.find(values(), LaserSource::code, code);
  }

  /**
   * A warning at {@code /laser/wavelength} when such a source does not usually emit there; empty
   * when it does. The usual bands are common practice, no source.
   */
  public Optional<Remark> plausible(double wavelengthNm) {
    if (wavelengthNm >= fromNm && wavelengthNm <= toNm) {
      return Optional.empty();
    }
    return Optional.of(
        Remark.warning(
            RemarkId.WAVELENGTH_UNLIKE_SOURCE,
            "/laser/wavelength",
            String.format(
                Locale.ROOT,
                "A %s laser usually has %d to %d nm. You gave %.0f nm.",
                code,
                fromNm,
                toNm,
                wavelengthNm)));
  }
}
