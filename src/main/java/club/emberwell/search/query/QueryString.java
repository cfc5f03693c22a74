package club.emberwell.search.query;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The part of an address behind the question mark. */
public final class QueryString {
  private QueryString() {}

  /** Values by name, in order. What cannot be decoded stays as it is, and means nothing there. */
  public static Map<String, List<String>> parse(String query) {
    Map<String, List<String>> found = new LinkedHashMap<>();
    String bare = query.startsWith("?") ? query.substring(1) : query;
    for (String pair : bare.split("&")) {
      if (!pair.isEmpty()) {
        int at = pair.indexOf('=');
        String name = at < 0 ? pair : pair.substring(0, at);
        String value = at < 0 ? "" : pair.substring(at + 1);
        found.computeIfAbsent(decoded(name), key -> new ArrayList<>()).add(decoded(value));
      }
    }
    return found;
  }

  /** A name with one of its values. */
  public record Pair(String name, String value) {}

  /** The same one by one, as the hidden fields of a form carry them along. */
  public static List<Pair> pairs(String query) {
    return parse(query).entrySet().stream()
        .flatMap(e -> e.getValue().stream().map(value -> new Pair(e.getKey(), value)))
        .toList();
  }

  public static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private static String decoded(String text) {
    try {
      return URLDecoder.decode(text, StandardCharsets.UTF_8);
    } catch (IllegalArgumentException e) {
      return text;
    }
  }
}
