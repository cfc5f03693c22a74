package club.emberwell.consensus;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Rows of the check files made with R 4.2.2; each file's header names the call and the source. */
public final class CheckFile {
  private CheckFile() {}

  /** Rows by column name, of a file whose cells hold no quotes. */
  public static List<Map<String, String>> statistics(String file) {
    return read("/reference/statistics/" + file);
  }

  public static List<Map<String, String>> dataset(String file) {
    return read("/reference/datasets/" + file);
  }

  private static List<Map<String, String>> read(String path) {
    try (InputStream in = CheckFile.class.getResourceAsStream(path)) {
      List<String> lines =
          new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> !line.startsWith("#"))
              .toList();
      String[] header = lines.get(0).split(",", -1);
      List<Map<String, String>> rows = new ArrayList<>();
      for (String line : lines.subList(1, lines.size())) {
        String[] cells = line.split(",", -1);
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < header.length; i++) {
          row.put(header[i], cells[i]);
        }
        rows.add(row);
      }
      return rows;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public static double number(String cell) {
    return cell.isEmpty() || cell.equals("NA") ? Double.NaN : Double.parseDouble(cell);
  }

  public static double[] vector(String cell) {
    return cell.isEmpty()
        ? new double[0]
        : Arrays.stream(cell.split(";")).mapToDouble(Double::parseDouble).toArray();
  }
}
