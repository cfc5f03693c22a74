package club.emberwell.laser;

/**
 * What a machine was set to, in canonical units; null = not given.
 *
 * @param powerPercent % of rated power; exactly one of this and {@code powerW} is given
 * @param powerW W
 * @param speedMmS mm/s
 * @param lineSpacingMm mm between scan lines (area work)
 * @param passes whole number, null = 1
 * @param repetitionRateKhz kHz
 * @param pulseDurationNs ns, FWHM
 * @param focusOffsetMm mm, + away from the work
 * @param airAssist on or off, null = not said
 */
public record Settings(
    Double powerPercent,
    Double powerW,
    Double speedMmS,
    Double lineSpacingMm,
    Integer passes,
    Double repetitionRateKhz,
    Double pulseDurationNs,
    Double focusOffsetMm,
    Boolean airAssist,
    Direction direction,
    Boolean crossPass) {}
