package club.emberwell.api.view;

import club.emberwell.laser.Laser;
import club.emberwell.quantity.QuantityKind;
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
        QuantityJson.of(QuantityKind.WAVELENGTH, laser.wavelengthNm()),
        QuantityJson.of(QuantityKind.POWER, laser.ratedPowerW()),
        laser.motion().code(),
        laser.regime().code(),
        laser.gated(),
        QuantityJson.of(QuantityKind.FOCAL_LENGTH, laser.lensFocalMm()),
        QuantityJson.of(QuantityKind.BEAM_DIAMETER, laser.beamDiameterUm()),
        QuantityJson.of(QuantityKind.SPEED, laser.maxSpeedMmS()));
  }
}
