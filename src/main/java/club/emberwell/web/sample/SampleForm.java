package club.emberwell.web.sample;

import club.emberwell.sample.SampleLimits;
import club.emberwell.sample.WrittenSample;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/** The fields of a sample, from and to what its owner wrote. */
final class SampleForm {
  private SampleForm() {}

  /**
   * @param id of a new sample, so that sending twice makes one; null for one that exists
   * @param shown whether it shows a report or a grid, and need not be named
   */
  static Form of(UUID id, boolean shown) {
    Form form = new Form();
    form.add(Field.of("id", "Id").hidden().value(Objects.toString(id, "")));
    form.add(Field.of("report", "Report").hidden());
    form.add(Field.of("grid", "Test grid").hidden());
    Field what = Field.of("what", "What it is").maxLength(SampleLimits.WHAT);
    form.add(
        shown
            ? what.hint("Empty = the words of the work.")
            : what.hint("Navy tumbler, second try").required());
    form.add(Field.of("box", "Box").hint("Box 3").maxLength(SampleLimits.BOX));
    form.add(
        Field.of("place", "Place")
            .hint("Shelf over the bench, left")
            .maxLength(SampleLimits.PLACE));
    form.add(Field.of("notes", "Notes").lines().maxLength(SampleLimits.NOTES));
    return form;
  }

  static WrittenSample written(SentForm sent) {
    return new WrittenSample(
        sent.id("report"),
        sent.id("grid"),
        sent.text("what"),
        sent.text("box"),
        sent.text("place"),
        sent.text("notes"));
  }

  /** What was written, by field name. */
  static Map<String, String> values(WrittenSample w) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("report", Objects.toString(w.report(), ""));
    values.put("grid", Objects.toString(w.grid(), ""));
    values.put("what", w.what());
    values.put("box", w.box());
    values.put("place", w.place());
    values.put("notes", w.notes());
    return values;
  }
}
