package club.emberwell.grid.sheet;

import club.emberwell.grid.reading.Axis;
import club.emberwell.laser.Amount;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What stands at a side of a grid.
 *
 * @param name of the setting
 * @param unit of all values; empty for a whole number
 * @param numbers in their order
 */
public record AxisLabels(String name, String unit, List<String> numbers) {
  public AxisLabels {
    numbers = List.copyOf(numbers);
  }

  public static AxisLabels of(Axis axis, UnitPreferences units) {
    Object first = axis.values().get(0);
    String unit =
        first instanceof Amount amount ? QuantityPrinter.unitLabel(amount.kind(), units) : "";
    return new AxisLabels(
        axis.setting().label(),
        unit,
        IntStream.range(0, axis.size())
            .mapToObj(i -> number(axis.values().get(i), units))
            .toList());
  }

  private static String number(Object value, UnitPreferences units) {
    return value instanceof Amount amount
        ? QuantityPrinter.number(
            QuantityPrinter.value(amount.number(), amount.kind(), units), units.style())
        : value.toString();
  }

  /** A value with its unit. */
  public String at(int place) {
    return unit.isEmpty() ? numbers.get(place) : numbers.get(place) + " " + unit;
  }
}
