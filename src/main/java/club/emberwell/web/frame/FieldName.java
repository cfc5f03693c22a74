package club.emberwell.web.frame;

import club.emberwell.laser.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The name of a field as people read it. */
final class FieldName {
  private static final String SETTINGS = "settings";

  private FieldName() {}

  /**
   * A pointer or a dotted name in words: {@code /settings/repetitionRate} is "frequency" as on
   * forms, {@code /trials/2/effect} is "trial 3: effect".
   */
  static String of(String pointer) {
    List<String> words = new ArrayList<>();
    for (String part : pointer.split("[/.]")) {
      if (part.matches("\\d{1,4}")) {
        String many = words.isEmpty() ? "" : words.remove(words.size() - 1);
        words.add(many.replaceFirst("s$", "") + " " + (Integer.parseInt(part) + 1));
      } else if (!part.isEmpty() && !part.equals(SETTINGS)) {
        words.add(word(part));
      }
    }
    return String.join(": ", words);
  }

  private static String word(String part) {
    return Setting.of(part)
        .map(Setting::label)
        .orElseGet(() -> part.replaceAll("([a-z])([A-Z])", "$1 $2"))
        .toLowerCase(Locale.ROOT);
  }
}
