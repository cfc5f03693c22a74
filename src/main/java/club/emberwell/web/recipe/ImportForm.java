package club.emberwell.web.recipe;

import club.emberwell.bench.Machine;
import club.emberwell.laser.Process;
import club.emberwell.recipe.RecipeLimits;
import club.emberwell.recipe.table.Table;
import club.emberwell.recipe.table.TableField;
import club.emberwell.recipe.table.TableLimits;
import club.emberwell.recipe.table.WrittenTable;
import club.emberwell.recipe.table.WrittenTable.WrittenColumn;
import club.emberwell.remark.EntryRefused;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The fields of a table that is read in: its text, and of each column what it holds. */
final class ImportForm {
  static final String TABLE = "table";
  private static final String FILE = "file";
  private static final String MACHINE = "machine";
  private static final String PROCESS = "process";
  private static final String FOLDER = "folder";
  private static final String ID = "id";

  /** As spreadsheets write where they do not write UTF-8. */
  private static final Charset OLDER = Charset.forName("windows-1252");

  /** Only columns that are read are sent on, so their fields are counted anew. */
  private static final Pattern OF_COLUMN =
      Pattern.compile("columns\\.(\\d+)\\.(field|unit|column)");

  private ImportForm() {}

  /** The text that was sent: of the file, if one was chosen. */
  static String table(SentForm sent) {
    List<Path> files = sent.files(FILE);
    return files.isEmpty() ? sent.typed(TABLE) : text(files.get(0));
  }

  private static String text(Path file) {
    try {
      byte[] bytes = Files.readAllBytes(file);
      try {
        return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      } catch (CharacterCodingException e) {
        return new String(bytes, OLDER);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The fields by which a table is chosen. */
  static Form blank() {
    return new Form()
        .add(Field.of(FILE, "A CSV file").aside())
        .add(
            Field.of(TABLE, "Or its text")
                .hint("The first line names the columns.")
                .lines()
                .maxLength(TableLimits.CHARACTERS));
  }

  /** The same with a field for each column of a table. */
  static Form of(String text, Table table, List<Machine> machines) {
    Form form = new Form();
    for (int i = 0; i < table.header().size(); i++) {
      TableField.Guess guess = TableField.guess(table.header().get(i));
      form.add(
          Field.of(name(i, "field"), called(table, i))
              .hint(examples(table, i))
              .choice("", "Do not read it")
              .choices(TableField.all(), TableField::code, TableField::label)
              .value(guess.field() == null ? "" : guess.field().code()));
      form.add(
          Field.of(name(i, "unit"), "Unit of " + called(table, i))
              .maxLength(TableLimits.UNIT)
              .value(guess.unit()));
    }
    form.add(
        Field.of(MACHINE, "Machine")
            .hint("Of rows that name none.")
            .choice("", "none")
            .choices(machines, m -> m.id().toString(), Machine::name)
            .folded()
            .value(machines.size() == 1 ? machines.get(0).id().toString() : ""));
    form.add(
        Field.of(PROCESS, "What you do")
            .hint("Of rows that do not say it.")
            .choice("", "nothing")
            .choices(Process.values(), Process::label)
            .folded());
    form.add(
        Field.of(FOLDER, "Folder")
            .hint("Of rows that lie in none.")
            .maxLength(RecipeLimits.FOLDER));
    form.add(Field.of(TABLE, "The table").lines().maxLength(TableLimits.CHARACTERS).value(text));
    return form.add(Field.of(ID, "").hidden().value(UUID.randomUUID().toString()));
  }

  static String name(int column, String part) {
    return "columns." + column + "." + part;
  }

  private static String called(Table table, int column) {
    String header = table.header().get(column);
    return header.isEmpty() ? "Column " + (column + 1) : header;
  }

  /** What stands in its first rows, so that nobody has to open the table beside. */
  private static String examples(Table table, int column) {
    List<String> some =
        table.rows().stream()
            .map(row -> row.get(column))
            .filter(cell -> !cell.isEmpty())
            .distinct()
            .limit(2)
            .map(cell -> cell.length() > 40 ? cell.substring(0, 40) + "…" : cell)
            .toList();
    return some.isEmpty() ? "Empty" : String.join("; ", some);
  }

  /** What was said of a table's columns. */
  static WrittenTable written(SentForm sent, Table table) {
    List<WrittenColumn> columns =
        read(sent, table)
            .map(i -> new WrittenColumn(i, sent.text(name(i, "field")), sent.text(name(i, "unit"))))
            .toList();
    return new WrittenTable(
        sent.id(ID),
        sent.typed(TABLE),
        columns,
        sent.id(MACHINE),
        sent.text(PROCESS),
        sent.text(FOLDER));
  }

  private static Stream<Integer> read(SentForm sent, Table table) {
    return Stream.iterate(0, i -> i + 1)
        .limit(table.header().size())
        .filter(i -> sent.text(name(i, "field")) != null);
  }

  /** Remarks of what was sent on, at the columns of the page. */
  static EntryRefused atColumns(EntryRefused refused, SentForm sent, Table table) {
    List<Integer> columns = new ArrayList<>(read(sent, table).toList());
    return new EntryRefused(
        refused.remarks().stream()
            .map(remark -> remark.at(pointer(remark.field(), columns)))
            .toList());
  }

  private static String pointer(String field, List<Integer> columns) {
    Matcher of = OF_COLUMN.matcher(field.replaceFirst("^/", "").replace('/', '.'));
    return of.matches()
        ? "/" + name(columns.get(Integer.parseInt(of.group(1))), of.group(2)).replace('.', '/')
        : field;
  }
}
