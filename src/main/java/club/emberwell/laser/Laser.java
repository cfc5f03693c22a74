package club.emberwell.laser;

/**
 * A laser as far as physics needs it. Boxed fields are null where the owner did not say.
 *
 * @param wavelengthNm nm
 * @param ratedPowerW nominal optical power, W
 * @param lensFocalMm mm
 * @param beamDiameterUm 1/e2 diameter at focus, um
 * @param maxSpeedMmS mm/s
 */
public record Laser(
    LaserSource source,
    double wavelengthNm,
    double ratedPowerW,
    Motion motion,
    Emission emission,
    Double lensFocalMm,
    Double beamDiameterUm,
    Double maxSpeedMmS) {
  public Regime regime() {
    return emission.regime();
  }

  /** True where a cw source is dimmed by pulse-width modulation. */
  public boolean gated() {
    return emission.gated();
  }

  public WavelengthBand band() {
    return WavelengthBand.of(wavelengthNm);
  }
}
