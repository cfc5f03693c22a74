package club.emberwell.web.eyewear;

import club.emberwell.eyewear.EyewearLimits;
import club.emberwell.eyewear.WrittenGlasses;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/** The fields of a pair of glasses, from and to what its owner wrote. */
final class GlassesForm {
  private GlassesForm() {}

  /**
   * @param id of a new pair, so that sending twice makes one; null for one that exists
   */
  static Form of(UUID id) {
    Form form = new Form().atField();
    form.add(Field.of("id", "Id").hidden().value(Objects.toString(id, "")));
    form.add(
        Field.of("name", "Name")
            .hint("Your name for them, such as Green pair by the door.")
            .maxLength(EyewearLimits.NAME)
            .required());
    form.add(
        Field.of("marking", "What is printed on them")
            .hint(
                "Line by line as it stands there, such as OD 6+ @ 900-1070 nm, D 1064 LB6, or"
                    + " 180-315 D LB10.")
            .lines()
            .maxLength(EyewearLimits.MARKING)
            .required());
    form.add(Field.of("notes", "Notes").lines().maxLength(EyewearLimits.NOTES));
    return form;
  }

  static WrittenGlasses written(SentForm sent) {
    return new WrittenGlasses(sent.text("name"), sent.text("marking"), sent.text("notes"));
  }

  /** What was written, by field name. */
  static Map<String, String> values(WrittenGlasses w) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("name", w.name());
    values.put("marking", w.marking());
    values.put("notes", w.notes());
    return values;
  }
}
