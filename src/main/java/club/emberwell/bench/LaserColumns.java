package club.emberwell.bench;

import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;

/** A laser as columns: of a machine as it is, of a report as it was. */
@Embeddable
public class LaserColumns {
  private LaserSource source;

  @Column(name = "wavelength_nm")
  private double wavelengthNm;

  @Column(name = "rated_power_w")
  private double ratedPowerW;

  private Motion motion;

  private Regime regime;

  private boolean gated;

  @Column(name = "lens_focal_mm")
  private Double lensFocalMm;

  @Column(name = "beam_diameter_um")
  private Double beamDiameterUm;

  @Column(name = "max_speed_mm_s")
  private Double maxSpeedMmS;

  protected LaserColumns() {}

  public static LaserColumns of(Laser laser) {
    LaserColumns columns = new LaserColumns();
    columns.source = laser.source();
    columns.wavelengthNm = laser.wavelengthNm();
    columns.ratedPowerW = laser.ratedPowerW();
    columns.motion = laser.motion();
    columns.regime = laser.regime();
    columns.gated = laser.gated();
    columns.lensFocalMm = laser.lensFocalMm();
    columns.beamDiameterUm = laser.beamDiameterUm();
    columns.maxSpeedMmS = laser.maxSpeedMmS();
    return columns;
  }

  public Laser toLaser() {
    return new Laser(
        source,
        wavelengthNm,
        ratedPowerW,
        motion,
        new Emission(regime, gated),
        lensFocalMm,
        beamDiameterUm,
        maxSpeedMmS);
  }
}
