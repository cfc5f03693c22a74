package club.emberwell.laser;

/**
 * A laser as far as physics needs it. Boxed fields are null where the owner did not say.
 *
 * @param wavelengthNm nm
 * @param ratedPowerW nominal optical power, W
 * @param lensFocalMm mm
 * @param beamDiameterUm 1/e2 diameter at focus, um
 * @param maxSpeedMmS mm/s
 * @param gated true where a cw source is dimmed by pulse-width modulation
 */
public record Laser(
    LaserSource source,
    double wavelengthNm,
    double ratedPowerW,
    Motion motion,
    Regime regime,
    boolean gated,
    Double lensFocalMm,
    Double beamDiameterUm,
    Double maxSpeedMmS) {
  public WavelengthBand band() {
    return WavelengthBand.of(wavelengthNm);
  }
}
