package club.emberwell.report;

import club.emberwell.quantity.WrittenQuantity;

/** Settings as typed; null = not given. Power is a percent or a power. */
public record WrittenSettings(
    WrittenQuantity power,
    WrittenQuantity speed,
    WrittenQuantity lineSpacing,
    Integer passes,
    WrittenQuantity repetitionRate,
    WrittenQuantity pulseDuration,
    WrittenQuantity focusOffset,
    Boolean airAssist,
    String direction,
    Boolean crossPass) {}
