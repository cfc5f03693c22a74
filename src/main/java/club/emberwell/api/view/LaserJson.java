package club.emberwell.api.view;

import club.emberwell.laser.Laser;
import club.emberwell.quantity.Dimension;
import com.fasterxml.jackson.annotation.JsonInclude;

/** A laser as it was used. */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record LaserJson(
    String source,
    QuantityJson wavelength,
    QuantityJson ratedPower,
    String motion,
    String regime,
    boolean gated,
    QuantityJson lens,
    QuantityJson beamDiameter,
    QuantityJson maxSpeed) {
  public static LaserJson of(Laser laser) {
    return new LaserJson(
        laser.source().code(),
        QuantityJson.of(Dimension.WAVELENGTH, laser.wavelengthNm()),
        QuantityJson.of(Dimension.POWER, laser.ratedPowerW()),
        laser.motion().code(),
        laser.regime().code(),
        laser.gated(),
        QuantityJson.of(Dimension.FOCAL_LENGTH, laser.lensFocalMm()),
        QuantityJson.of(Dimension.BEAM_DIAMETER, laser.beamDiameterUm()),
        QuantityJson.of(Dimension.SPEED, laser.maxSpeedMmS()));
  }
}
