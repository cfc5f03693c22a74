package club.emberwell.quantity;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Rows of a table of spellings: cells between bars, remarks after a hash; nothing is trimmed. */
final class Rows {
  private Rows() {}

  static List<String[]> of(String file) {
    try (InputStream in = Rows.class.getResourceAsStream("/quantity/" + file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#") && !line.isBlank())
          .map(line -> line.split("\\|", -1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
