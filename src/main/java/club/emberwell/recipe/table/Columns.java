package club.emberwell.recipe.table;

import club.emberwell.bench.FieldReader;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.recipe.table.WrittenTable.WrittenColumn;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Which column holds which field.
 *
 * @param units of the fields whose numbers may come without one
 */
record Columns(Map<TableField, Integer> at, Map<TableField, String> units) {
  /**
   * Reads what was said of a table's columns.
   *
   * @throws EntryRefused with the pointers of what is at fault
   */
  static Columns read(List<WrittenColumn> written, Table table) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    Map<TableField, Integer> at = new LinkedHashMap<>();
    Map<TableField, String> units = new LinkedHashMap<>();
    List<WrittenColumn> columns = written == null ? List.of() : written;
    for (int i = 0; i < columns.size(); i++) {
      String pointer = "/columns/" + i;
      WrittenColumn column = columns.get(i);
      TableField field = column == null ? null : field(column, pointer, in);
      if (column == null) {
        in.add(Remark.error(RemarkId.REQUIRED, pointer, "A column is missing here."));
      } else if (fits(column.column(), table, pointer, in) && field != null) {
        if (at.putIfAbsent(field, column.column()) != null) {
          String detail = "Two columns cannot both be this: %s.".formatted(field.label());
          in.add(Remark.error(RemarkId.VALUE_TWICE, pointer + "/field", detail));
        }
        units.put(field, in.text(pointer + "/unit", column.unit(), TableLimits.UNIT, false));
      }
    }
    if (at.isEmpty() && !in.failed()) {
      in.add(Remark.error(RemarkId.REQUIRED, "/columns", "Say what at least one column holds."));
    }
    Remarks.refuse(in.remarks());
    return new Columns(at, units);
  }

  private static TableField field(WrittenColumn column, String pointer, FieldReader in) {
    String at = pointer + "/field";
    String code = in.required(at, column.field());
    TableField field = code == null ? null : TableField.of(code.strip()).orElse(null);
    if (field == null && code != null && !code.isBlank()) {
      String all =
          TableField.all().stream().map(TableField::code).collect(Collectors.joining(", "));
      in.add(Remark.error(RemarkId.CHOICE_UNKNOWN, at, "Choose one of: " + all + "."));
    }
    return field;
  }

  private static boolean fits(Integer column, Table table, String pointer, FieldReader in) {
    boolean fits = column != null && column >= 0 && column < table.header().size();
    if (!fits) {
      String detail = "The columns count from 0 to %d.".formatted(table.header().size() - 1);
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, pointer + "/column", detail));
    }
    return fits;
  }

  /** What a row says of a field; null where it says nothing. */
  String cell(TableField field, List<String> row) {
    Integer column = at.get(field);
    String text = column == null ? "" : row.get(column);
    return text.isEmpty() ? null : text;
  }

  /** Null where a number has to bring its own. */
  String unit(TableField field) {
    return units.get(field);
  }
}
