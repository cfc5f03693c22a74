package club.emberwell.web.grid;

import club.emberwell.laser.Setting;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.report.SettingFields;
import java.util.List;
import java.util.stream.Stream;

/**
 * The fields of a grid in the groups in which the page shows them.
 *
 * @param sides what lies across and down, with the step between doses
 * @param piece the blank and its cells
 */
public record PlanFields(
    Form form,
    List<Field> work,
    List<Field> sides,
    List<Field> piece,
    List<Field> typed,
    List<Field> chosen) {

  static PlanFields of(Form form) {
    return new PlanFields(
        form,
        PlanForm.work().stream().map(WorkProperty::code).map(form::field).toList(),
        Stream.of(
                PlanForm.ACROSS + PlanForm.SETTING,
                PlanForm.ACROSS + PlanForm.VALUES,
                PlanForm.DOWN + PlanForm.SETTING,
                PlanForm.DOWN + PlanForm.VALUES,
                PlanForm.RESOLUTION,
                "axes.most")
            .map(form::field)
            .toList(),
        form.getFields().stream()
            .filter(f -> f.getName().startsWith("blank.") || f.getName().startsWith("timing."))
            .toList(),
        settings(form, false),
        settings(form, true));
  }

  private static List<Field> settings(Form form, boolean chosen) {
    return Stream.of(Setting.values())
        .filter(setting -> setting.value().isNumber() != chosen)
        .map(setting -> form.field(SettingFields.name(setting)))
        .toList();
  }

  /** Whether anything stands in the fields that are folded away. */
  public boolean isByHand() {
    return Stream.of(typed, chosen, sides, piece)
        .flatMap(List::stream)
        .anyMatch(field -> field.isFailed() || field.isWarned());
  }
}
