package club.emberwell.laser;

/**
 * What follows from a laser and its settings; null where an input is missing. All nominal.
 *
 * @param averagePowerW W
 * @param arealDose J/mm2, area work only
 * @param lineDose J/mm, line work only
 * @param pulseEnergyMj mJ
 * @param peakPowerKw kW, square pulse
 * @param peakFluence J/cm2 on the axis of a Gaussian beam
 * @param pulsePitchUm um between pulses along a line
 * @param pulseOverlap 1 - pitch/diameter; negative = gaps
 * @param pulsesPerSpot along a line
 * @param pulsesPerArea effective pulses per place over the filled area
 * @param lineOverlap 1 - spacing/diameter
 */
public record Derived(
    Double averagePowerW,
    Double arealDose,
    Double lineDose,
    Double pulseEnergyMj,
    Double peakPowerKw,
    Double peakFluence,
    Double pulsePitchUm,
    Double pulseOverlap,
    Double pulsesPerSpot,
    Double pulsesPerArea,
    Double lineOverlap) {}
