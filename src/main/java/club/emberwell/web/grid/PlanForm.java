package club.emberwell.web.grid;

import club.emberwell.bench.Machine;
import club.emberwell.grid.reading.GridLimits;
import club.emberwell.grid.reading.WrittenAxes;
import club.emberwell.grid.reading.WrittenBlank;
import club.emberwell.grid.reading.WrittenGrid;
import club.emberwell.grid.reading.WrittenTiming;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.report.SettingFields;
import club.emberwell.web.report.WorkFields;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The fields of a grid, named after the API's pointers, from and to what is written. */
final class PlanForm {
  static final String RESOLUTION = "axes.resolution";
  static final String ACROSS = "axes.across.";
  static final String DOWN = "axes.down.";
  static final String SETTING = "setting";
  static final String VALUES = "values";

  /** Steps between neighbouring doses to choose from, the finest first. */
  static final List<String> STEPS = List.of("1.05", "1.1", "1.15", "1.2", "1.3", "1.5", "2");

  static final String USUAL = "1.15";

  private static final int VALUES_LENGTH = 400;

  private PlanForm() {}

  static Form of(List<Machine> machines) {
    Form form = new Form();
    form.named(PlanForm::here);
    form.add(
        Field.of("machine", "Machine")
            .choices(machines, m -> m.id().toString(), Machine::name)
            .value(machines.isEmpty() ? "" : machines.get(0).id().toString())
            .required());
    form.add(
        Field.of("process", "What you will do")
            .choices(Process.values(), Process::label)
            .required());
    work().forEach(property -> form.add(WorkFields.field(property)));
    axis(form, ACROSS, "Across");
    axis(form, DOWN, "Down");
    steps(form);
    for (Setting setting : Setting.values()) {
      form.add(staying(setting));
    }
    piece(form);
    form.add(
        Field.of("name", "Name").hint("For your list; may stay empty").maxLength(GridLimits.NAME));
    form.add(WorkFields.field(WorkProperty.NOTES));
    form.add(Field.of("id", "").hidden());
    return form;
  }

  /** What is said of the work beside process and notes. */
  static List<WorkProperty> work() {
    return Stream.of(WorkProperty.values())
        .filter(p -> p.value().shape() == Shape.WORD || p.value().shape() == Shape.QUANTITY)
        .toList();
  }

  /** The parts of an axis are typed in one field. */
  private static String here(String name) {
    for (String axis : List.of(ACROSS, DOWN)) {
      if (name.startsWith(axis)) {
        return name.equals(axis + SETTING) ? name : axis + VALUES;
      }
      if ((name + ".").equals(axis)) {
        return axis + VALUES;
      }
    }
    return name;
  }

  private static Field staying(Setting setting) {
    Field field = SettingFields.optional(setting);
    return field.hint(setting.form().isNeeded() ? null : field.getHint());
  }

  private static void axis(Form form, String axis, String label) {
    Field settings = Field.of(axis + SETTING, label).choice("", "as usual");
    Stream.of(Setting.values())
        .filter(setting -> setting.value().isNumber())
        .forEach(setting -> settings.choice(setting.code(), setting.label()));
    form.add(settings);
    form.add(
        Field.of(axis + VALUES, label + ": values by hand")
            .hint("40; 50; 60 % or 40 to 80 % in 5. Empty: from members' results")
            .autocomplete("off")
            .maxLength(VALUES_LENGTH));
  }

  private static void steps(Form form) {
    form.add(
        Field.of(RESOLUTION, "Step from one dose to the next")
            .choices(STEPS, step -> step, PlanForm::percent)
            .value(USUAL));
    form.add(Field.of("axes.most", "At most so many tests").inputMode("numeric").maxLength(3));
  }

  static String percent(String step) {
    return Math.round((Double.parseDouble(step) - 1) * 100) + " %";
  }

  private static void piece(Form form) {
    form.add(Field.quantity("blank.cell", "Cell size", "8 mm"));
    form.add(Field.quantity("blank.gap", "Gap", "2 mm"));
    form.add(Field.quantity("blank.width", "Width of the piece", "Room for the grid, 60 mm"));
    form.add(Field.quantity("blank.height", "Height of the piece", "40 mm"));
    form.add(
        Field.quantity("blank.diameter", "Diameter, if it is round", "74 mm; its height above"));
    form.add(Field.of("blank.rotary", "Rotary").choice("", "no").choice("true", "yes, it turns"));
    form.add(
        Field.quantity(
            "timing.acceleration", "Acceleration", "1000 mm/s²; for the time to burn only"));
    form.add(
        Field.quantity(
            "timing.overscan", "Overscan", "5 mm; run with the beam off at each end of a line"));
  }

  /**
   * What was typed.
   *
   * @throws EntryRefused where it cannot even be written down
   */
  static WrittenGrid written(SentForm sent) {
    WrittenSettings settings = SettingFields.written(sent);
    Integer most = sent.number("axes.most");
    WrittenAxes axes =
        new WrittenAxes(
            AxisField.written(sent, ACROSS), AxisField.written(sent, DOWN), resolution(sent), most);
    WrittenGrid written =
        new WrittenGrid(
            sent.text("name"),
            sent.id("machine"),
            null,
            WorkFields.written(sent),
            settings.values().isEmpty() ? null : settings,
            axes,
            new WrittenBlank(
                sent.quantity("blank.cell"),
                sent.quantity("blank.gap"),
                sent.quantity("blank.width"),
                sent.quantity("blank.height"),
                sent.quantity("blank.diameter"),
                sent.flag("blank.rotary")),
            new WrittenTiming(
                sent.quantity("timing.acceleration"), sent.quantity("timing.overscan")));
    if (!sent.remarks().isEmpty()) {
      throw new EntryRefused(sent.remarks());
    }
    return written;
  }

  private static Double resolution(SentForm sent) {
    String text = sent.text(RESOLUTION);
    if (text == null) {
      return null;
    }
    try {
      return Double.valueOf(text);
    } catch (NumberFormatException e) {
      String detail = "Choose one of the steps.";
      sent.remarks().add(Remark.error(RemarkId.CHOICE_UNKNOWN, "/axes/resolution", detail));
      return null;
    }
  }

  /** What was written, by field name. */
  static Map<String, String> values(WrittenGrid written) {
    Map<String, String> values = new LinkedHashMap<>();
    WorkFields.fill(values, written.work());
    put(values, "machine", written.machine());
    put(values, "name", written.name());
    SettingFields.fill(values, written.settings());
    WrittenAxes axes = written.axes();
    AxisField.fill(values, ACROSS, axes.across());
    AxisField.fill(values, DOWN, axes.down());
    put(values, RESOLUTION, axes.resolution());
    put(values, "axes.most", axes.most());
    WrittenBlank blank = written.blank() == null ? WrittenBlank.USUAL : written.blank();
    values.put("blank.cell", SentForm.typed(blank.cell()));
    values.put("blank.gap", SentForm.typed(blank.gap()));
    values.put("blank.width", SentForm.typed(blank.width()));
    values.put("blank.height", SentForm.typed(blank.height()));
    values.put("blank.diameter", SentForm.typed(blank.diameter()));
    put(values, "blank.rotary", Boolean.TRUE.equals(blank.rotary()) ? "true" : null);
    WrittenTiming timing = written.timing() == null ? WrittenTiming.USUAL : written.timing();
    values.put("timing.acceleration", SentForm.typed(timing.acceleration()));
    values.put("timing.overscan", SentForm.typed(timing.overscan()));
    return values;
  }

  private static void put(Map<String, String> values, String name, Object value) {
    if (value != null) {
      values.put(name, value.toString());
    }
  }
}
