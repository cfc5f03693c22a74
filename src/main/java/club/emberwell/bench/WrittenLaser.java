package club.emberwell.bench;

import club.emberwell.quantity.WrittenQuantity;

/** A laser as somebody described it, of a machine or in a report; null = not given. */
public record WrittenLaser(
    String source,
    WrittenQuantity wavelength,
    WrittenQuantity ratedPower,
    String motion,
    String regime,
    WrittenQuantity lens,
    WrittenQuantity beamDiameter) {}
