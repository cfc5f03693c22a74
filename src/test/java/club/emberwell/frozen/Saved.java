package club.emberwell.frozen;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What was made on the way, and how it is written where it differs from run to run. */
final class Saved {
  private static final Pattern NAME = Pattern.compile("\\$([a-z][a-z-]*)");

  private static final Pattern UUIDS =
      Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}");

  private static final Pattern WEBHOOK_SECRET = Pattern.compile("whsec_[\\w+/]+=*");

  /** The place of a row in a list: its keys, among them ids and times. */
  private static final Pattern CURSOR =
      Pattern.compile("(?<![\\w-])(?![0-9a-f]{64}(?![\\w-]))(?!Cursor)[\\w-]{60,}(?![\\w-])");

  /** From the most telling to the least. */
  private static final Map<Pattern, String> CHANGING = new LinkedHashMap<>();

  static {
    CHANGING.put(UUIDS, "<id>");
    CHANGING.put(Pattern.compile("ew_[\\w-]{43}"), "<token>");
    CHANGING.put(Pattern.compile("\\d{4}-\\d\\d-\\d\\dT[\\d:]{8}\\.\\d{6}Z"), "<time>");
    // of feeds, and an answer's where it is not written as all others
    CHANGING.put(Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d(:[\\d.]+)?Z"), "<other-time>");
    CHANGING.put(
        Pattern.compile("\\d{1,2} [A-Z][a-z]{2} 20\\d\\d, \\d\\d:\\d\\d:\\d\\d UTC"), "<moment>");
    CHANGING.put(Pattern.compile("\\d{1,2} [A-Z][a-z]{2} 20\\d\\d"), "<day>");
    CHANGING.put(Pattern.compile("\\d+ (min|h|days)( ago)"), "<age>$2");
    CHANGING.put(Pattern.compile("https?://(localhost|127\\.0\\.0\\.1):\\d+"), "<club>");
    CHANGING.put(Pattern.compile("\\b[0-9a-f]{64}\\b"), "<hash>");
    CHANGING.put(Pattern.compile("/\\S*/home-\\w+"), "<home>");
    CHANGING.put(WEBHOOK_SECRET, "<webhook-secret>");
    CHANGING.put(CURSOR, "<cursor>");
    CHANGING.put(Pattern.compile("(?<![\\w-])[\\w-]{43}(?![\\w-])"), "<secret>");
  }

  /** What stands in examples for what each run makes anew. */
  private static final Map<Pattern, String> LOOKING_ALIKE = new LinkedHashMap<>();

  static {
    LOOKING_ALIKE.put(Pattern.compile("ew_[\\w-]{43}"), "ew_" + "Example".repeat(6) + "s");
    LOOKING_ALIKE.put(
        Pattern.compile("\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:[\\d.]+Z"),
        "2026-11-26T11:39:00.123456Z");
    LOOKING_ALIKE.put(
        Pattern.compile("https?://(localhost|127\\.0\\.0\\.1):\\d+"), "https://club.example");
    LOOKING_ALIKE.put(Pattern.compile("\\b[0-9a-f]{64}\\b"), "0123456789abcdef".repeat(4));
    LOOKING_ALIKE.put(Pattern.compile("\"bytes\" : \\d+"), "\"bytes\" : 31431");
    LOOKING_ALIKE.put(Pattern.compile("/\\S*/home-\\w+"), "/var/lib/emberwell");
    LOOKING_ALIKE.put(Pattern.compile("\\d{8}T\\d{6}Z"), "20261126T113900Z");
    LOOKING_ALIKE.put(Pattern.compile("\"node\" : \"[^\"]+\""), "\"node\" : \"shed\"");
    LOOKING_ALIKE.put(Pattern.compile("\"tables\" : \\d+"), "\"tables\" : 27");
    LOOKING_ALIKE.put(WEBHOOK_SECRET, "whsec_" + "Example".repeat(6) + "s=");
    LOOKING_ALIKE.put(CURSOR, "Cursor".repeat(12));
    LOOKING_ALIKE.put(
        Pattern.compile("(?<![\\w-])[\\w-]{43}(?![\\w-])"), "Example".repeat(6) + "s");
  }

  private static final Pattern TAG = Pattern.compile("\\w{3}-\\w");

  private final Map<String, String> values = new LinkedHashMap<>();

  void put(String name, String value) {
    values.put(name, value);
  }

  /**
   * The text with what was saved in the place of its names after a dollar sign; other dollars stay.
   */
  String filled(String text) {
    return NAME.matcher(text)
        .replaceAll(
            found -> Matcher.quoteReplacement(values.getOrDefault(found.group(1), found.group())));
  }

  /** The text with names in angle brackets where each run has its own ids, times and secrets. */
  String masked(String text) {
    String masked = text;
    for (Map.Entry<String, String> each : values.entrySet()) {
      masked = masked.replace(each.getValue(), "<" + each.getKey() + ">");
    }
    for (Map.Entry<Pattern, String> each : CHANGING.entrySet()) {
      masked = each.getKey().matcher(masked).replaceAll(each.getValue());
    }
    return masked;
  }

  /**
   * The text with something fixed where each run has its own; ids that were saved look the same in
   * all examples.
   */
  String alike(String example, String text) {
    Map<String, String> ids = new LinkedHashMap<>();
    values.forEach((name, value) -> ids.putIfAbsent(value, fixed(name)));
    String alike =
        UUIDS
            .matcher(text)
            .replaceAll(
                found ->
                    ids.computeIfAbsent(found.group(), id -> fixed(example + " " + ids.size())));
    for (String value : values.values()) {
      alike = TAG.matcher(value).matches() ? alike.replace(value, "JG1-6") : alike;
    }
    for (Map.Entry<Pattern, String> each : LOOKING_ALIKE.entrySet()) {
      alike = each.getKey().matcher(alike).replaceAll(each.getValue());
    }
    return alike;
  }

  private static String fixed(String name) {
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)).toString();
  }
}
