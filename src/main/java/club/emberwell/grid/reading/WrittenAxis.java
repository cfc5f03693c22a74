package club.emberwell.grid.reading;

import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Shape;
import club.emberwell.quantity.WrittenQuantity;
import java.util.List;

/**
 * One axis as typed: its values, or from where to where in how many steps, or neither: then they
 * come from the range.
 *
 * @param setting code of a setting of the catalogue that is a number
 * @param steps how many values from {@code from} to {@code to}
 * @param values in their order along the axis; a whole number is a text without a unit
 */
public record WrittenAxis(
    String setting,
    WrittenQuantity from,
    WrittenQuantity to,
    Integer steps,
    List<WrittenQuantity> values) {

  /** An axis of given values. */
  public static WrittenAxis of(Setting setting, List<WrittenQuantity> values) {
    return new WrittenAxis(setting.code(), null, null, null, List.copyOf(values));
  }

  /** As it stands among written settings. */
  Object value(Setting setting, int place) {
    WrittenQuantity written = values.get(place);
    return setting.value().shape() == Shape.COUNT
        ? (Object) Integer.valueOf(written.text())
        : written;
  }
}
