package club.emberwell.quantity;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** The package's data files: one entry a line, cells between bars, remarks after a hash. */
final class DataLines {
  private DataLines() {}

  /** Cells of every entry, trimmed, trailing empty cells kept. */
  static List<List<String>> read(String file) {
    try (InputStream in = DataLines.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("missing data file " + file);
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.isBlank() && !line.startsWith("#"))
          .map(line -> Arrays.stream(line.split("\\|", -1)).map(String::strip).toList())
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The items of one cell. */
  static List<String> items(String cell) {
    return Arrays.stream(cell.split(",")).map(String::strip).filter(s -> !s.isEmpty()).toList();
  }
}
