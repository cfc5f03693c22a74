package club.emberwell.web.report;

import club.emberwell.bench.Machine;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.reading.ReadingLimits;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;

/** The fields of a report, named after the API's pointers, with what stands in them. */
public final class ReportForm {
  static final String ID = "id";

  /** The recipe by which it was made, if any. */
  static final String RECIPE = "recipe";

  private ReportForm() {}

  /** The blank form. */
  static Form of(List<Machine> machines) {
    Form form = tried(machines, "What you did");
    form.add(Field.of("effect", "Result").choices(Effect.values(), Effect::label).required());
    form.add(quality());
    form.add(
        Field.of("defects", "Defects")
            .hint("Charring, halo, banding …")
            .list("defect-words")
            .maxLength(ReadingLimits.WORDS));
    work(form, true);
    return form;
  }

  /** The fields of settings that are kept: nobody says how they came out. */
  public static Form kept(List<Machine> machines, UnitPreferences units) {
    Form form = tried(machines, "What you do");
    work(form, true);
    return UnitFields.add(form, units).atField();
  }

  /** With what is done to what. */
  private static Form tried(List<Machine> machines, String process) {
    Form form = new Form();
    form.add(machine(machines));
    work(form, false);
    form.add(Field.of("process", process).choices(Process.values(), Process::label).required());
    for (Setting setting : Setting.values()) {
      form.add(SettingFields.field(setting));
    }
    return form;
  }

  /**
   * The same for a report that is not there yet.
   *
   * @param id it will have, so that sending twice posts once
   */
  static Form withId(Form form, UUID id) {
    return form.add(Field.of(ID, "").hidden().value(id.toString()))
        .add(Field.of(RECIPE, "").hidden());
  }

  /** The fields of a grid: its tests stay as they were burned and judged. */
  static Form ofGrid(List<Machine> machines) {
    Form form = new Form();
    form.add(machine(machines));
    work(form, false);
    form.add(
        Field.of("process", "What you did").choices(Process.values(), Process::label).required());
    work(form, true);
    return form;
  }

  private static Field machine(List<Machine> machines) {
    return Field.of("machine", "Machine")
        .choices(machines, m -> m.id().toString(), Machine::name)
        .value(machines.size() == 1 ? machines.get(0).id().toString() : "")
        .required();
  }

  private static Field quality() {
    List<Integer> all = IntStream.rangeClosed(1, ReadingLimits.BEST_QUALITY).boxed().toList();
    return Field.of("quality", "Quality (if right)")
        .choice("", "not rated")
        .choices(all, Object::toString, Object::toString);
  }

  /** What is said freely comes last. */
  private static void work(Form form, boolean freely) {
    for (WorkProperty property : WorkProperty.values()) {
      if (property.value().shape().isFree() == freely) {
        form.add(WorkFields.field(property));
      }
    }
  }
}
