package club.emberwell.api.view;

import club.emberwell.laser.dose.Derived;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/**
 * What follows from a laser and its settings; all nominal. Overlaps and counts are bare numbers;
 * {@code basis} is always {@code nominal}: rated power, set speed, beam diameter at focus.
 */
public record DerivedJson(@JsonValue Map<String, Object> values) {
  public static DerivedJson of(Derived derived) {
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("basis", "nominal");
    derived
        .values()
        .forEach(
            (formula, value) ->
                values.put(
                    formula.field(),
                    formula.unit().isEmpty()
                        ? QuantityJson.number(value)
                        : QuantityJson.of(formula.unit(), value)));
    values.values().removeIf(Objects::isNull);
    return new DerivedJson(values);
  }
}
