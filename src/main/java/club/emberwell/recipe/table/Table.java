package club.emberwell.recipe.table;

import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.RuntimeJsonMappingException;
import com.fasterxml.jackson.dataformat.csv.CsvMapper;
import com.fasterxml.jackson.dataformat.csv.CsvParser;
import com.fasterxml.jackson.dataformat.csv.CsvSchema;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * A table as it came in: RFC 4180, also with semicolons or tabs as spreadsheets write them.
 *
 * @param header what its first line says
 * @param rows cells beneath, as many in each as the header has
 */
public record Table(List<String> header, List<List<String>> rows) {
  private static final String AT = "/table";
  private static final String BYTE_ORDER_MARK = "\uFEFF";
  private static final CsvMapper CSV =
      CsvMapper.builder().enable(CsvParser.Feature.WRAP_AS_ARRAY).build();

  /**
   * Reads a table; empty lines are left out.
   *
   * @throws EntryRefused at {@code /table} where it is none, or too large
   */
  public static Table read(String text) {
    if (text == null || text.isBlank()) {
      throw refused(RemarkId.REQUIRED, "Choose a table, or put its text here.");
    }
    if (text.length() > TableLimits.CHARACTERS) {
      throw refused(
          RemarkId.TABLE_TOO_LARGE,
          "At most %,d characters fit at once. Read it in in parts."
              .formatted(TableLimits.CHARACTERS));
    }
    List<List<String>> lines = lines(text.replaceFirst("^" + BYTE_ORDER_MARK, ""));
    if (lines.size() < 2) {
      throw refused(
          RemarkId.TABLE_UNREADABLE, "A table needs a line with names and a row below it.");
    }
    List<String> header = lines.get(0);
    if (header.size() > TableLimits.COLUMNS) {
      throw refused(
          RemarkId.TABLE_TOO_LARGE, "At most %d columns fit.".formatted(TableLimits.COLUMNS));
    }
    if (lines.size() - 1 > TableLimits.ROWS) {
      throw refused(
          RemarkId.TABLE_TOO_LARGE,
          "At most %d rows fit at once. Read it in in parts.".formatted(TableLimits.ROWS));
    }
    return new Table(
        header,
        lines.subList(1, lines.size()).stream().map(row -> fitted(row, header.size())).toList());
  }

  private static List<List<String>> lines(String text) {
    List<List<String>> lines = new ArrayList<>();
    CsvSchema shape = CsvSchema.emptySchema().withColumnSeparator(separator(text));
    try (MappingIterator<List<String>> rows =
        CSV.readerForListOf(String.class).with(shape).readValues(text)) {
      while (rows.hasNext()) {
        List<String> cells = rows.next().stream().map(Table::plain).toList();
        if (cells.stream().anyMatch(cell -> !cell.isEmpty())) {
          lines.add(cells);
        }
      }
    } catch (IOException | RuntimeJsonMappingException e) {
      throw refused(
          RemarkId.TABLE_UNREADABLE,
          "Row %d cannot be read: a quotation mark is open.".formatted(lines.size() + 1));
    }
    return lines;
  }

  /** The one that stands most often in the first line. */
  private static char separator(String text) {
    String first = text.lines().filter(line -> !line.isBlank()).findFirst().orElse("");
    char best = ',';
    for (char one : new char[] {';', '\t'}) {
      if (count(first, one) > count(first, best)) {
        best = one;
      }
    }
    return best;
  }

  private static long count(String line, char one) {
    return line.chars().filter(c -> c == one).count();
  }

  /** Without the apostrophe by which a spreadsheet is kept from running a text. */
  private static String plain(String cell) {
    String text = cell == null ? "" : cell.strip();
    return text.startsWith("'") ? text.substring(1) : text;
  }

  private static List<String> fitted(List<String> row, int columns) {
    List<String> cells = new ArrayList<>(row.subList(0, Math.min(columns, row.size())));
    while (cells.size() < columns) {
      cells.add("");
    }
    return List.copyOf(cells);
  }

  private static EntryRefused refused(RemarkId id, String detail) {
    return new EntryRefused(id, AT, detail);
  }
}
