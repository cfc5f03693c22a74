package club.emberwell.api.view;

import club.emberwell.laser.Direction;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.report.WrittenSettings;
import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * What a machine was set to.
 *
 * @param power in % of the rated power or in W, as it was given
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SettingsJson(
    QuantityJson power,
    QuantityJson speed,
    QuantityJson lineSpacing,
    Integer passes,
    QuantityJson repetitionRate,
    QuantityJson pulseDuration,
    QuantityJson focusOffset,
    Boolean airAssist,
    Direction direction,
    Boolean crossPass) {
  private static final WrittenSettings NOTHING =
      new WrittenSettings(null, null, null, null, null, null, null, null, null, null);

  /**
   * @param written what was typed, null where it is not at hand
   */
  public static SettingsJson of(Settings s, WrittenSettings written) {
    WrittenSettings w = written == null ? NOTHING : written;
    return new SettingsJson(
        s.powerPercent() != null
            ? QuantityJson.of(QuantityKind.POWER_PERCENT, s.powerPercent(), w.power())
            : QuantityJson.of(QuantityKind.POWER, s.powerW(), w.power()),
        QuantityJson.of(QuantityKind.SPEED, s.speedMmS(), w.speed()),
        QuantityJson.of(QuantityKind.LINE_SPACING, s.lineSpacingMm(), w.lineSpacing()),
        s.passes(),
        QuantityJson.of(QuantityKind.REPETITION_RATE, s.repetitionRateKhz(), w.repetitionRate()),
        QuantityJson.of(QuantityKind.PULSE_DURATION, s.pulseDurationNs(), w.pulseDuration()),
        QuantityJson.of(QuantityKind.FOCUS_OFFSET, s.focusOffsetMm(), w.focusOffset()),
        s.airAssist(),
        s.direction(),
        s.crossPass());
  }
}
