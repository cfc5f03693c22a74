package club.emberwell.report;

import club.emberwell.quantity.WrittenQuantity;

/** A laser described in the report itself, for those who keep no machine here. */
public record WrittenLaser(
    String source,
    WrittenQuantity wavelength,
    WrittenQuantity ratedPower,
    String motion,
    String regime,
    WrittenQuantity lens,
    WrittenQuantity beamDiameter) {}
