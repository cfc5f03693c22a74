package club.emberwell.recipe.table;

import club.emberwell.bench.FieldReader;
import club.emberwell.bench.Machine;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.recipe.CameFrom;
import club.emberwell.recipe.CameFrom.Way;
import club.emberwell.recipe.WrittenRecipe;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WrittenSettings;
import club.emberwell.report.reading.WrittenWork;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Writes a row of a table down as a recipe; pure. */
final class RowReader {
  /** A number alone; whatever else stands there is a unit of its own. */
  private static final Pattern NUMBER = Pattern.compile("[+\\-\u2212]?[0-9][0-9.,]*");

  private final WrittenTable table;
  private final Columns columns;
  private final List<Machine> machines;

  RowReader(WrittenTable table, Columns columns, List<Machine> machines) {
    this.table = table;
    this.columns = columns;
    this.machines = machines;
  }

  /**
   * A row in its owner's words.
   *
   * @param remarks what cannot even be written down
   */
  record Row(WrittenRecipe written, List<Remark> remarks) {}

  Row read(List<String> row) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String folder = columns.cell(TableField.FOLDER, row);
    WrittenRecipe written =
        new WrittenRecipe(
            columns.cell(TableField.NAME, row),
            folder == null ? table.folder() : folder,
            machine(columns.cell(TableField.MACHINE, row), in),
            work(row),
            settings(row, in),
            CameFrom.of(Way.TABLE));
    return new Row(written, in.remarks());
  }

  /** By its name. */
  private UUID machine(String name, FieldReader in) {
    if (name == null) {
      return table.machine();
    }
    List<Machine> called =
        machines.stream().filter(machine -> machine.name().equalsIgnoreCase(name)).toList();
    if (called.size() != 1) {
      String detail =
          called.isEmpty() ? "You have no machine called “%s”." : "Two machines are called “%s”.";
      in.add(Remark.error(RemarkId.MACHINE_UNKNOWN, "/machine", detail.formatted(name)));
      return null;
    }
    return called.get(0).id();
  }

  private WrittenWork work(List<String> row) {
    String process = columns.cell(TableField.PROCESS, row);
    WrittenWork work = WrittenWork.of(process == null ? table.process() : code(process));
    for (WorkProperty property : WorkProperty.values()) {
      TableField field = TableField.of(property);
      String text = columns.cell(field, row);
      Object value = field.isQuantity() ? quantity(field, text) : text;
      work = work.with(property, value);
    }
    return work;
  }

  /** As pages call it, or its code. */
  private static String code(String process) {
    return Stream.of(Process.values())
        .filter(one -> one.label().equalsIgnoreCase(process))
        .map(Process::code)
        .findFirst()
        .orElse(process);
  }

  private WrittenSettings settings(List<String> row, FieldReader in) {
    WrittenSettings settings = WrittenSettings.NONE;
    for (Setting setting : Setting.values()) {
      TableField field = TableField.of(setting);
      String text = columns.cell(field, row);
      settings = settings.with(setting, text == null ? null : value(setting, field, text, in));
    }
    return settings;
  }

  private Object value(Setting setting, TableField field, String text, FieldReader in) {
    String at = "/settings/" + setting.code();
    return switch (setting.value().shape()) {
      case QUANTITY -> quantity(field, text);
      case COUNT -> count(text, at, in);
      case FLAG -> {
        String chosen = choice(setting, text, at, in);
        yield chosen == null ? null : Boolean.valueOf(chosen);
      }
      case CHOICE -> choice(setting, text, at, in);
    };
  }

  private WrittenQuantity quantity(TableField field, String text) {
    if (text == null) {
      return null;
    }
    String unit = columns.unit(field);
    boolean bare = unit != null && NUMBER.matcher(text).matches();
    return WrittenQuantity.of(bare ? text + " " + unit : text);
  }

  private static Integer count(String text, String at, FieldReader in) {
    try {
      return Integer.valueOf(text);
    } catch (NumberFormatException e) {
      in.add(Remark.error(RemarkId.NOT_A_WHOLE_NUMBER, at, "A whole number, such as 2."));
      return null;
    }
  }

  /** As pages call it, or its code. */
  private static String choice(Setting setting, String text, String at, FieldReader in) {
    return setting.value().choices().stream()
        .filter(one -> one.label().equalsIgnoreCase(text))
        .map(Choice::code)
        .findFirst()
        .orElseGet(
            () ->
                in.choice(at, text, setting.value().choices().stream().map(Choice::code).toList()));
  }
}
