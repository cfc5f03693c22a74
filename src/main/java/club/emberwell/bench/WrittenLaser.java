package club.emberwell.bench;

import club.emberwell.quantity.WrittenQuantity;
import com.fasterxml.jackson.annotation.JsonCreator;

/**
 * A laser as somebody described it, of a machine or in a report; null = not given.
 *
 * @param inputBeam diameter of the beam before the lens; from it and the lens the spot at focus is
 *     calculated where nobody gives it
 */
public record WrittenLaser(
    String source,
    WrittenQuantity wavelength,
    WrittenQuantity ratedPower,
    String motion,
    String regime,
    WrittenQuantity lens,
    WrittenQuantity beamDiameter,
    WrittenQuantity inputBeam) {
  @JsonCreator
  public WrittenLaser {
    // the canonical one is what a program's words are read into
  }

  /** One of which nobody said how wide the beam is before the lens. */
  public WrittenLaser(
      String source,
      WrittenQuantity wavelength,
      WrittenQuantity ratedPower,
      String motion,
      String regime,
      WrittenQuantity lens,
      WrittenQuantity beamDiameter) {
    this(source, wavelength, ratedPower, motion, regime, lens, beamDiameter, null);
  }
}
