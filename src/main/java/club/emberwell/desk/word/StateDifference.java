package club.emberwell.desk.word;

import club.emberwell.entry.FieldChange;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What differs between two states of a term or a caution; parts of one thing joined by a dot. */
public final class StateDifference {
  private static final String VERSION = "version";

  private StateDifference() {}

  /** What differs between two states, by field; null = there was none. */
  public static List<FieldChange> between(Map<String, Object> before, Map<String, Object> after) {
    Map<String, String> was = flat(before);
    Map<String, String> is = flat(after);
    List<String> fields = new ArrayList<>(is.keySet());
    was.keySet().stream().filter(f -> !is.containsKey(f)).forEach(fields::add);
    return fields.stream()
        .filter(f -> !f.equals(VERSION) && !Objects.equals(was.get(f), is.get(f)))
        .map(f -> new FieldChange(f, was.get(f), is.get(f)))
        .toList();
  }

  private static Map<String, String> flat(Map<String, Object> state) {
    Map<String, String> flat = new TreeMap<>();
    if (state != null) {
      state.forEach((key, value) -> add(flat, key, value));
    }
    return flat;
  }

  private static void add(Map<String, String> flat, String key, Object value) {
    if (value instanceof Map<?, ?> map) {
      map.forEach((inner, of) -> add(flat, key + "." + inner, of));
    } else if (value instanceof List<?> list) {
      if (!list.isEmpty()) {
        flat.put(
            key, list.stream().map(String::valueOf).sorted().collect(Collectors.joining("; ")));
      }
    } else if (value != null && !Boolean.FALSE.equals(value)) {
      flat.put(key, value.toString());
    }
  }
}
