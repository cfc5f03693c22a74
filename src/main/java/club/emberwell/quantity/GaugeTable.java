package club.emberwell.quantity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sheet gauge: no unit, since one number is a different thickness for every metal. Read only with
 * its metal, from the tables in {@code gauges.txt}.
 */
final class GaugeTable {
  private static final Pattern GAUGE =
      Pattern.compile(
          "(?i)(?:# ?([0-9]{1,2})|([0-9]{1,2}) ?(?:ga|gauge|gage)\\.?)(?:[ ,]+([a-z ]+))?");

  private static final Map<String, Column> BY_METAL = new TreeMap<>();
  private static final List<Column> COLUMNS = new ArrayList<>();

  static {
    DataLines.read("gauges.txt").forEach(GaugeTable::add);
  }

  /** One table: its name, and inches by gauge. */
  record Column(String name, Map<Integer, BigDecimal> inches) {}

  /**
   * @param column the metal's table, empty where no known metal was named
   */
  record Found(int gauge, Optional<Column> column) {
    Optional<BigDecimal> inches() {
      return column.map(c -> c.inches().get(gauge));
    }

    /** Inches in every table that has this gauge. */
    List<BigDecimal> everywhere() {
      return COLUMNS.stream()
          .filter(c -> c.inches().containsKey(gauge))
          .map(c -> c.inches().get(gauge))
          .distinct()
          .toList();
    }
  }

  private GaugeTable() {}

  /** Empty where the text is no gauge. */
  static Optional<Found> read(String text) {
    Matcher m = GAUGE.matcher(text);
    if (!m.matches()) {
      return Optional.empty();
    }
    String digits = m.group(1) == null ? m.group(2) : m.group(1);
    String metal = m.group(3) == null ? "" : m.group(3).strip().toLowerCase(Locale.ROOT);
    return Optional.of(
        new Found(Integer.parseInt(digits), Optional.ofNullable(BY_METAL.get(metal))));
  }

  private static void add(List<String> cells) {
    Map<Integer, BigDecimal> inches = new TreeMap<>();
    for (String pair : DataLines.items(cells.get(2))) {
      String[] sides = pair.split(" ");
      inches.put(Integer.valueOf(sides[0]), new BigDecimal(sides[1]));
    }
    Column column = new Column(cells.get(0), inches);
    COLUMNS.add(column);
    DataLines.items(cells.get(1)).forEach(metal -> BY_METAL.put(metal, column));
  }
}
