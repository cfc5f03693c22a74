package club.emberwell.keep;

import java.util.Collection;
import java.util.stream.Collectors;

/** Names as they stand in statements. */
final class Names {
  private Names() {}

  static String quoted(String name) {
    return '"' + name.replace("\"", "\"\"") + '"';
  }

  static String list(Collection<String> names) {
    return names.stream().map(Names::quoted).collect(Collectors.joining(", "));
  }
}
