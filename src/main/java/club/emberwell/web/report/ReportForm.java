package club.emberwell.web.report;

import club.emberwell.bench.Machine;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.report.reading.ReadingLimits;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Field.Option;
import club.emberwell.web.frame.Form;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The fields of a report, named after the API's pointers, with what stands in them. */
final class ReportForm {
  private static final int QUANTITY_LENGTH = 64;
  private static final Option NOTHING = new Option("", "not said", false);

  private ReportForm() {}

  /** The blank form. */
  static Form of(List<Machine> machines) {
    Form form = new Form();
    form.add(machine(machines)).add(word("material", "Material", "materials").required());
    form.add(word("coating", "Coating", "coatings").hint("Powder coat, anodised, paint …"));
    form.add(word("colour", "Colour of the coating", "colours").hint("A word or a hex colour."));
    form.add(quantity("thickness", "Thickness", "3 mm, 1/8 in; asked for at cuts"));
    form.add(choice("process", "What you did", processes()).required());
    for (Setting setting : Setting.values()) {
      form.add(SettingFields.field(setting));
    }
    form.add(choice("effect", "How it came out", effects()).required());
    form.add(choice("quality", "How good, where right", qualities()));
    form.add(word("defects", "What went wrong", "defect-words").hint("Charring, halo, banding …"));
    form.add(Field.of("notes", "Notes").maxLength(ReadingLimits.NOTES).lines());
    form.add(Field.of("lot", "Lot or supplier's batch").maxLength(ReadingLimits.LOT));
    form.add(
        Field.of("controllerVersion", "Controller version")
            .maxLength(ReadingLimits.CONTROLLER_VERSION));
    return form;
  }

  private static Field machine(List<Machine> machines) {
    return Field.of("machine", "On which machine")
        .options(machines.stream().map(m -> option(m.id().toString(), m.name())).toList())
        .value(machines.size() == 1 ? machines.get(0).id().toString() : "")
        .required();
  }

  private static Field word(String name, String label, String datalist) {
    return Field.of(name, label).list(datalist).maxLength(ReadingLimits.WORDS);
  }

  private static Field quantity(String name, String label, String hint) {
    return Field.of(name, label).hint(hint).numeric().maxLength(QUANTITY_LENGTH);
  }

  private static Field choice(String name, String label, List<Option> options) {
    return Field.of(name, label).options(options);
  }

  private static List<Option> processes() {
    return Stream.of(Process.values()).map(p -> option(p.code(), p.label())).toList();
  }

  private static List<Option> effects() {
    return Stream.of(Effect.values()).map(e -> option(e.code(), e.label())).toList();
  }

  private static List<Option> qualities() {
    return Stream.concat(
            Stream.of(NOTHING),
            IntStream.rangeClosed(1, ReadingLimits.BEST_QUALITY)
                .mapToObj(q -> option(Integer.toString(q), Integer.toString(q))))
        .toList();
  }

  private static Option option(String value, String label) {
    return new Option(value, label, false);
  }
}
