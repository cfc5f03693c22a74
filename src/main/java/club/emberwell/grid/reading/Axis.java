package club.emberwell.grid.reading;

import club.emberwell.laser.Amount;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Shape;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.reading.WrittenSettings;
import java.util.List;

/**
 * A setting with the values it takes, in their order along the axis.
 *
 * @param values as {@link Settings} has them: an {@link Amount} or an Integer; empty where they are
 *     to be planned
 */
public record Axis(Setting setting, List<Object> values) {
  public Axis {
    values = List.copyOf(values);
  }

  public int size() {
    return values.size();
  }

  public boolean isOpen() {
    return values.isEmpty();
  }

  /** The value at a place in the canonical unit. */
  public double number(int place) {
    Object value = values.get(place);
    return value instanceof Amount amount ? amount.number() : ((Number) value).doubleValue();
  }

  /** The settings with this axis's value at a place. */
  public Settings at(Settings settings, int place) {
    return settings.with(setting, values.get(place));
  }

  /**
   * As it is kept.
   *
   * @param typed whose values are kept as they were typed, or null
   */
  WrittenAxis written(WrittenAxis typed) {
    boolean asTyped =
        typed != null
            && typed.values() != null
            && typed.values().size() == size()
            && setting.value().shape() != Shape.COUNT;
    List<WrittenQuantity> kept =
        asTyped ? typed.values() : values.stream().map(this::written).toList();
    return WrittenAxis.of(setting, kept);
  }

  private WrittenQuantity written(Object value) {
    Object written = WrittenSettings.written(value);
    return written instanceof WrittenQuantity quantity
        ? quantity
        : WrittenQuantity.of(written.toString());
  }
}
