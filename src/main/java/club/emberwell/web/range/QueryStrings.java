package club.emberwell.web.range;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A query string inside a parameter, back as parameters. */
public final class QueryStrings {
  private static final int LONGEST = 4000;

  private QueryStrings() {}

  /** What cannot be decoded is left out; too long a string is cut. */
  public static Map<String, List<String>> parse(String parameters) {
    Map<String, List<String>> parsed = new LinkedHashMap<>();
    String text = parameters.length() > LONGEST ? parameters.substring(0, LONGEST) : parameters;
    for (String pair : text.split("&")) {
      int equals = pair.indexOf('=');
      if (equals > 0) {
        try {
          String value = URLDecoder.decode(pair.substring(equals + 1), StandardCharsets.UTF_8);
          String name = URLDecoder.decode(pair.substring(0, equals), StandardCharsets.UTF_8);
          parsed.computeIfAbsent(name, n -> new ArrayList<>()).add(value);
        } catch (IllegalArgumentException e) {
          // not a pair of ours
          continue;
        }
      }
    }
    return parsed;
  }
}
