package club.emberwell.laser;

import club.emberwell.remark.Coded;
import java.util.Optional;

/** Bands that are never mixed in one range (absorption and mechanism differ between them). */
public enum WavelengthBand implements Coded {
  UV_355("355", "355 nm", 340, 370),
  BLUE("405-455", "405-455 nm", 395, 470),
  GREEN_532("532", "532 nm", 510, 550),
  NEAR_INFRARED("900-1100", "900-1100 nm", 900, 1100),
  CO2_10600("10600", "10.6 µm", 9000, 11000),
  OTHER("other", "other wavelength", Double.NaN, Double.NaN);

  private final String code;
  private final String label;
  private final double fromNm;
  private final double toNm;

  WavelengthBand(String code, String label, double fromNm, double toNm) {
    this.code = code;
    this.label = label;
    this.fromNm = fromNm;
    this.toNm = toNm;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** The band a wavelength in nm lies in; OTHER where none does. */
  public static WavelengthBand of(double wavelengthNm) {
    for (WavelengthBand band : values()) {
      if (wavelengthNm >= band.fromNm && wavelengthNm <= band.toNm) {
        return band;
      }
    }
    return OTHER;
  }

  /** The kind of source that usually emits there; empty where none does. */
  public Optional<LaserSource> usualSource() {
    return switch (this) {
      case UV_355 -> Optional.of(LaserSource.UV);
      case BLUE -> Optional.of(LaserSource.DIODE);
      case GREEN_532 -> Optional.of(LaserSource.GREEN);
      case NEAR_INFRARED -> Optional.of(LaserSource.FIBRE);
      case CO2_10600 -> Optional.of(LaserSource.CO2);
      case OTHER -> Optional.empty();
    };
  }

  /** The value with this API code; spaces, case and underscores do not matter; empty if none. */
  public static Optional<WavelengthBand> of(String code) {
    return Codes.find(values(), WavelengthBand::code, code);
  }
}
