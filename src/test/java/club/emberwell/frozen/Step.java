package club.emberwell.frozen;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.yaml.snakeyaml.Yaml;

/**
 * One thing somebody does, read from a script. Its keys: {@code call} is {@code GET reports/$slate}
 * in a script for the API (below {@code /api/v1/} unless it begins with a slash), {@code GET
 * /post}, {@code FOLLOW} or {@code SEND} and a selector in one for a browser; {@code by} is
 * somebody's handle, nobody's for a stranger; {@code name} that of the file which holds what they
 * see, none where nobody looks; {@code status} what has to come back where nobody looks; {@code
 * save} a name for what was made, which later steps write after a dollar sign, {@code from} the
 * field that holds its id, {@code last} where only what follows its last slash counts; {@code
 * example} makes it the operation's example instead of the first one; {@code match} the version an
 * edit is based on; {@code body} goes as JSON, {@code raw} as it is; {@code fill} and {@code press}
 * are fields and the button of a form.
 */
record Step(Map<String, Object> keys) {

  /** The steps of a script in {@code src/test/resources/frozen}. */
  static List<Step> read(String script) {
    try (InputStream in = Step.class.getResourceAsStream("/frozen/" + script)) {
      List<Map<String, Object>> steps = new Yaml().load(in);
      return steps.stream().filter(keys -> keys.containsKey("call")).map(Step::new).toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The same step with what was saved in the place of names after a dollar sign. */
  @SuppressWarnings("unchecked")
  Step with(UnaryOperator<String> saved) {
    return new Step((Map<String, Object>) mapped(keys, saved));
  }

  private static Object mapped(Object value, UnaryOperator<String> saved) {
    if (value instanceof Map<?, ?> map) {
      return map.entrySet().stream()
          .collect(
              Collectors.toMap(
                  e -> String.valueOf(e.getKey()),
                  e -> mapped(e.getValue(), saved),
                  (a, b) -> b,
                  LinkedHashMap::new));
    }
    if (value instanceof List<?> list) {
      return list.stream().map(each -> mapped(each, saved)).toList();
    }
    return value instanceof String text ? saved.apply(text) : value;
  }

  String text(String key) {
    Object value = keys.get(key);
    return value == null ? null : value.toString();
  }

  boolean has(String key) {
    return keys.containsKey(key);
  }

  @SuppressWarnings("unchecked")
  Map<String, String> fields(String key) {
    Object value = keys.get(key);
    return value == null ? Map.of() : (Map<String, String>) value;
  }

  String verb() {
    return text("call").split(" ", 2)[0];
  }

  String target() {
    return text("call").replaceFirst("^\\w+ ?", "");
  }
}
