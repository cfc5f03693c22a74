package club.emberwell.listing;

import java.io.IOException;
import java.io.Writer;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Tables as CSV (RFC 4180): every table the program writes. What a spreadsheet would run as a
 * formula gets an apostrophe in front; whoever reads the table takes one apostrophe away where a
 * cell begins with one. Numbers stay numbers.
 */
public final class Csv {
  /** The rule, for those who read a table. */
  public static final String RULE =
      "A text that a spreadsheet would run as a formula (it begins with =, +, -, @, a tab or a line"
          + " break), or that begins with an apostrophe, has an apostrophe put in front. Remove"
          + " one where a cell begins with one. Numbers such as -3 are never changed.";

  private static final String DEFUSED = "=+-@\t\r\n'\uFF1D\uFF0B\uFF0D\uFF20";
  private static final Pattern NUMBER = Pattern.compile("[-+]?\\d+(?:[.,]\\d+)?(?:[eE][-+]?\\d+)?");

  /** Below it a double tells every whole number from its neighbours. */
  private static final double WHOLE = 1e15;

  private Csv() {}

  /**
   * Writes a line.
   *
   * @param cells numbers, truth values and whatever its text says; null = nothing
   */
  public static void line(Writer out, List<?> cells) throws IOException {
    out.write(line(cells));
  }

  /** A line with its end. */
  public static String line(List<?> cells) {
    StringBuilder line = new StringBuilder();
    for (Object cell : cells) {
      if (cell instanceof Double number) {
        line.append(number(number));
      } else if (cell instanceof Number || cell instanceof Boolean) {
        line.append(cell);
      } else if (cell != null) {
        line.append(cell(cell.toString()));
      }
      line.append(',');
    }
    line.setLength(Math.max(0, line.length() - 1));
    return line.append("\r\n").toString();
  }

  /** Without ".0" where it is whole. */
  private static String number(double value) {
    return value == Math.rint(value) && Math.abs(value) < WHOLE
        ? Long.toString((long) value)
        : Double.toString(value);
  }

  /** A text as a cell. */
  public static String cell(String text) {
    if (text.isEmpty()) {
      return text;
    }
    boolean runs = DEFUSED.indexOf(text.charAt(0)) >= 0 && !NUMBER.matcher(text).matches();
    String plain = runs ? "'" + text : text;
    return isQuoted(plain) ? '"' + plain.replace("\"", "\"\"") + '"' : plain;
  }

  private static boolean isQuoted(String text) {
    return text.indexOf('"') >= 0
        || text.indexOf(',') >= 0
        || text.indexOf('\n') >= 0
        || text.indexOf('\r') >= 0;
  }
}
