package club.emberwell.web.report;

import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenWork;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.SentForm;
import java.util.Locale;
import java.util.Map;

/** The fields of what was worked on: made, read and filled again from the catalogue. */
public final class WorkFields {
  private WorkFields() {}

  /** The empty field of a property. */
  public static Field field(WorkProperty property) {
    Field field = Field.of(property.code(), property.question()).hint(property.form().hint());
    if (property.form().isNeeded()) {
      field.required();
    }
    return switch (property.value().shape()) {
      case WORD -> field.list(datalist(property)).maxLength(property.value().longest());
      case QUANTITY -> field.quantity();
      case TEXT -> field.maxLength(property.value().longest());
      case LINES -> field.maxLength(property.value().longest()).lines();
    };
  }

  private static String datalist(WorkProperty property) {
    return property.value().vocabulary().plural().toLowerCase(Locale.ROOT);
  }

  /** What was sent of the work. */
  public static WrittenWork written(SentForm form) {
    WrittenWork written = WrittenWork.of(form.text("process"));
    for (WorkProperty property : WorkProperty.values()) {
      written =
          written.with(
              property,
              switch (property.value().shape()) {
                case QUANTITY -> form.quantity(property.code());
                case WORD, TEXT, LINES -> form.text(property.code());
              });
    }
    return written;
  }

  /** Puts what was written back into the fields' values. */
  public static void fill(Map<String, String> values, WrittenWork written) {
    written
        .values()
        .forEach(
            (property, value) ->
                values.put(
                    property.code(),
                    value instanceof WrittenQuantity quantity
                        ? SentForm.typed(quantity)
                        : value.toString()));
    if (written.process() != null) {
      values.put("process", written.process().strip().replace(' ', '-'));
    }
  }
}
