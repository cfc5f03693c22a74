package club.emberwell.api.view;

import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import org.jspecify.annotations.Nullable;

/** A laser as it was used. */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record LaserJson(
    @JsonUnwrapped Beam beam,
    @Nullable Motion motion,
    @Nullable Regime regime,
    boolean gated,
    @JsonUnwrapped Focus focus,
    @Nullable QuantityJson maxSpeed) {

  /** What leaves the source. */
  public record Beam(
      LaserSource source, QuantityJson wavelength, @Nullable QuantityJson ratedPower) {}

  /**
   * What the lens makes of it.
   *
   * @param inputBeam before the lens; only of one's own machines
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Focus(
      @Nullable QuantityJson lens,
      @Nullable QuantityJson beamDiameter,
      @Nullable QuantityJson inputBeam) {}

  /**
   * What was typed of a laser; null = nothing, or not at hand.
   *
   * @param inputBeam with what it comes to
   */
  public record Written(
      WrittenQuantity wavelength,
      WrittenQuantity ratedPower,
      WrittenQuantity lens,
      WrittenQuantity beamDiameter,
      WrittenQuantity maxSpeed,
      QuantityJson inputBeam) {
    private static final Written NOTHING = new Written(null, null, null, null, null, null);
  }

  public static LaserJson of(Laser laser) {
    return of(laser, Written.NOTHING);
  }

  public static LaserJson of(Laser laser, Written w) {
    return new LaserJson(
        new Beam(
            laser.source(),
            QuantityJson.of(QuantityKind.WAVELENGTH, laser.wavelengthNm(), w.wavelength()),
            QuantityJson.of(QuantityKind.POWER, laser.ratedPowerW(), w.ratedPower())),
        laser.motion(),
        laser.regime(),
        laser.gated(),
        new Focus(
            QuantityJson.of(QuantityKind.FOCAL_LENGTH, laser.lensFocalMm(), w.lens()),
            QuantityJson.of(QuantityKind.BEAM_DIAMETER, laser.beamDiameterUm(), w.beamDiameter()),
            w.inputBeam()),
        QuantityJson.of(QuantityKind.SPEED, laser.maxSpeedMmS(), w.maxSpeed()));
  }
}
