package club.emberwell.web.frame;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The name of a field as people read it. */
final class FieldName {
  private FieldName() {}

  /**
   * A pointer or a dotted name in words: {@code /settings/lineSpacing} is "settings: line spacing",
   * {@code /trials/2/effect} is "trial 3: effect".
   */
  static String of(String pointer) {
    List<String> words = new ArrayList<>();
    for (String part : pointer.split("[/.]")) {
      if (part.matches("\\d{1,4}")) {
        String many = words.isEmpty() ? "" : words.remove(words.size() - 1);
        words.add(many.replaceFirst("s$", "") + " " + (Integer.parseInt(part) + 1));
      } else if (!part.isEmpty()) {
        words.add(part.replaceAll("([a-z])([A-Z])", "$1 $2").toLowerCase(Locale.ROOT));
      }
    }
    return String.join(": ", words);
  }
}
