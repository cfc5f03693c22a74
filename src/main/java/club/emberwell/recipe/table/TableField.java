package club.emberwell.recipe.table;

import club.emberwell.laser.Setting;
import club.emberwell.report.reading.WorkProperty;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What a column of a table may hold: a field of a recipe.
 *
 * @param code as the API's pointer, with dots
 * @param isQuantity whether a unit may stand beside its numbers
 */
public record TableField(String code, String label, boolean isQuantity) {
  public static final TableField NAME = new TableField("name", "Name", false);
  public static final TableField FOLDER = new TableField("folder", "Folder", false);
  public static final TableField MACHINE = new TableField("machine", "Machine", false);
  public static final TableField PROCESS = new TableField("process", "What you do", false);

  private static final String SETTINGS = "settings.";

  /** All of them, in the order of the form. */
  private static final List<TableField> ALL =
      Stream.of(
              Stream.of(NAME, FOLDER, MACHINE, PROCESS),
              Stream.of(WorkProperty.values()).map(TableField::of),
              Stream.of(Setting.values()).map(TableField::of))
          .flatMap(fields -> fields)
          .toList();

  /** "Speed (mm/min)", "Speed [mm/min]". */
  private static final Pattern WITH_UNIT = Pattern.compile("(.*?)\\s*[(\\[]([^)\\]]+)[)\\]]\\s*");

  /** What a header says: which field it likely is, and the unit that stands in it. */
  public record Guess(TableField field, String unit) {}

  static TableField of(WorkProperty property) {
    return new TableField(property.code(), property.label(), property.value().kind() != null);
  }

  static TableField of(Setting setting) {
    return new TableField(
        SETTINGS + setting.code(), setting.label(), !setting.value().bases().isEmpty());
  }

  public static List<TableField> all() {
    return ALL;
  }

  public static Optional<TableField> of(String code) {
    return ALL.stream().filter(field -> field.code().equals(code)).findFirst();
  }

  /**
   * What a header likely means, by the names that fields have on pages and in the API; the field is
   * null where it is none of them.
   */
  public static Guess guess(String header) {
    Matcher with = WITH_UNIT.matcher(header);
    boolean unit = with.matches();
    String name = plain(unit ? with.group(1) : header);
    TableField field =
        ALL.stream()
            .filter(
                one ->
                    plain(one.label()).equals(name)
                        || plain(one.code()).equals(name)
                        || plain(one.code().replace(SETTINGS, "")).equals(name))
            .findFirst()
            .orElse(null);
    boolean told = unit && field != null && field.isQuantity();
    return new Guess(field, told ? with.group(2).strip() : null);
  }

  private static String plain(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
  }

  Optional<Setting> setting() {
    return code.startsWith(SETTINGS)
        ? Setting.of(code.substring(SETTINGS.length()))
        : Optional.empty();
  }
}
