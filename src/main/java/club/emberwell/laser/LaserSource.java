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
  CO2("co2", "CO2", 9000, 11000, 10_600, "A glass or metal tube"),
  DIODE("diode", "Diode", 400, 460, 455, "A small module with blue or violet light"),
  FIBRE("fibre", "Fibre", 1020, 1100, 1064, "A box with a fibre to the head; marks metal"),
  GREEN("green", "Green", 510, 550, 532, "Green light"),
  UV("uv", "UV", 190, 380, 355, "Ultraviolet light; marks plastic and glass"),
  INFRARED(
      "infrared", "Infrared", 780, 1100, 1064, "A small infrared module, often beside a diode");

  private final String code;
  private final String label;
  private final int fromNm;
  private final int toNm;
  private final int usualNm;
  private final String look;

  LaserSource(String code, String label, int fromNm, int toNm, int usualNm, String look) {
    this.code = code;
    this.label = label;
    this.fromNm = fromNm;
    this.toNm = toNm;
    this.usualNm = usualNm;
    this.look = look;
  }

  /** The word in the API and in addresses. */
  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** The line most such lasers have, nm: common practice, no source. */
  public int usualNm() {
    return usualNm;
  }

  /** By what its owner knows it: "A glass or metal tube. Usually 10600 nm, continuous." */
  public String described() {
    return "%s. Usually %d nm, %s.".formatted(look, usualNm, usualRegime().label());
  }

  /** How its light comes where nobody said: tubes and diodes run on, the others in ns pulses. */
  public Regime usualRegime() {
    return this == CO2 || this == DIODE ? Regime.CW : Regime.NS;
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
