package club.emberwell.web.report;

import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.SentForm;
import java.util.Map;

/** The fields of settings on forms: made, read and filled again from the catalogue. */
public final class SettingFields {
  private static final String PREFIX = "settings.";
  private static final int COUNT_LENGTH = 5;

  private SettingFields() {}

  /** Name of a setting's field, after the API's pointer. */
  public static String name(Setting setting) {
    return PREFIX + setting.code();
  }

  /** The empty field of a setting. */
  public static Field field(Setting setting) {
    Field field = optional(setting);
    return setting.form().isNeeded() ? field.required() : field;
  }

  /** The same where it may stay empty. */
  public static Field optional(Setting setting) {
    Field field = Field.of(name(setting), setting.question()).hint(setting.form().hint());
    return switch (setting.value().shape()) {
      case QUANTITY -> field.quantity();
      case COUNT -> field.inputMode("numeric").maxLength(COUNT_LENGTH);
      case FLAG, CHOICE -> field.choices(setting.value().choices(), Choice::code, Choice::label);
    };
  }

  /** What was sent of settings. */
  public static WrittenSettings written(SentForm form) {
    WrittenSettings written = WrittenSettings.NONE;
    for (Setting setting : Setting.values()) {
      written = written.with(setting, sent(form, setting));
    }
    return written;
  }

  private static Object sent(SentForm form, Setting setting) {
    String name = name(setting);
    return switch (setting.value().shape()) {
      case QUANTITY -> form.quantity(name);
      case COUNT -> form.number(name);
      case FLAG -> form.flag(name);
      case CHOICE -> form.text(name);
    };
  }

  /** Puts what was written back into the fields' values. */
  public static void fill(Map<String, String> values, WrittenSettings written) {
    written
        .values()
        .forEach(
            (setting, value) ->
                values.put(
                    name(setting),
                    value instanceof WrittenQuantity quantity
                        ? SentForm.typed(quantity)
                        : value.toString()));
  }
}
