package club.emberwell.web.grid;

import club.emberwell.grid.reading.Axis;
import club.emberwell.grid.reading.WrittenAxis;
import club.emberwell.laser.Amount;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.web.frame.SentForm;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * The values of an axis in one line of text: {@code 40; 50; 60 %} or {@code 40 to 80 % in 5}. A
 * number without a unit takes that of the last value.
 */
final class AxisField {
  private static final Pattern SPAN =
      Pattern.compile("(.+?)\\s+to\\s+(.+?)\\s+in\\s+(\\d{1,3})(?:\\s+steps)?");

  private static final Pattern SEPARATOR = Pattern.compile("\\s*;\\s*|,\\s+");
  private static final Pattern BARE = Pattern.compile("[-+]?[\\d.,]+");
  private static final Pattern UNIT = Pattern.compile("[-+]?[\\d.,\\s]+(.*)");

  private AxisField() {}

  /** Null where neither setting nor values are given. */
  static WrittenAxis written(SentForm sent, String axis) {
    String setting = sent.text(axis + PlanForm.SETTING);
    String text = sent.text(axis + PlanForm.VALUES);
    if (setting == null && text == null) {
      return null;
    }
    if (text == null) {
      return new WrittenAxis(setting, null, null, null, null);
    }
    Matcher span = SPAN.matcher(text);
    if (span.matches()) {
      List<WrittenQuantity> ends = withUnit(List.of(span.group(1), span.group(2)));
      return new WrittenAxis(
          setting, ends.get(0), ends.get(1), Integer.valueOf(span.group(3)), null);
    }
    return new WrittenAxis(setting, null, null, null, withUnit(List.of(SEPARATOR.split(text))));
  }

  private static List<WrittenQuantity> withUnit(List<String> texts) {
    Matcher last = UNIT.matcher(texts.get(texts.size() - 1));
    String unit = last.matches() ? last.group(1).strip() : "";
    List<WrittenQuantity> values = new ArrayList<>();
    for (String text : texts) {
      boolean bare = BARE.matcher(text.strip()).matches() && !unit.isEmpty();
      values.add(WrittenQuantity.of(bare ? text.strip() + " " + unit : text));
    }
    return values;
  }

  static void fill(Map<String, String> values, String axis, WrittenAxis written) {
    values.put(axis + PlanForm.SETTING, written.setting());
    values.put(
        axis + PlanForm.VALUES,
        written.values().stream().map(SentForm::typed).collect(Collectors.joining("; ")));
  }

  /** Planned values as they are read again, whatever the reader's units. */
  static String typed(Axis axis, UnitPreferences reader) {
    return axis.values().stream()
        .map(value -> typed(value, reader))
        .collect(Collectors.joining("; "));
  }

  static String typed(Object value, UnitPreferences reader) {
    return value instanceof Amount amount
        ? QuantityPrinter.print(BigDecimal.valueOf(amount.number()), amount.kind(), reader)
        : value.toString();
  }
}
