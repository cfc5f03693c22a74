package club.emberwell.entry;

import club.emberwell.bench.StoredJson;
import com.fasterxml.jackson.databind.JsonNode;
import com.github.difflib.DiffUtils;
import com.github.difflib.patch.AbstractDelta;
import com.github.difflib.patch.DeltaType;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * What differs between two versions of an entry, in the words that were typed.
 *
 * @param fields in the order of the entry
 * @param lines of its long text, in order; empty where that is the same
 */
public record Difference(List<FieldChange> fields, List<Line> lines) {
  /** Lines of two texts that are compared one by one; above, the whole text counts as changed. */
  private static final int COMPARED_LINES = 600;

  /** What became of a line. */
  public enum Change {
    KEPT,
    GONE,
    NEW;

    /** The word in the API and on pages. */
    public String code() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  /** One line of either text. */
  public record Line(Change change, String text) {}

  /** Field by field. */
  public static Difference between(Map<String, String> before, Map<String, String> after) {
    Set<String> all = new LinkedHashSet<>(before.keySet());
    all.addAll(after.keySet());
    List<FieldChange> changes =
        all.stream()
            .filter(field -> !Objects.equals(before.get(field), after.get(field)))
            .map(field -> new FieldChange(field, before.get(field), after.get(field)))
            .toList();
    return new Difference(changes, List.of());
  }

  /** The same with what a long text says, line by line. */
  public Difference with(String before, String after) {
    return new Difference(
        fields,
        before.equals(after) ? List.of() : lines(before.lines().toList(), after.lines().toList()));
  }

  public boolean isEmpty() {
    return fields.isEmpty() && lines.isEmpty();
  }

  /** What was written as text by pointer, e.g. {@code /settings/speed}. */
  public static Map<String, String> fields(Object written) {
    Map<String, String> fields = new LinkedHashMap<>();
    collect(StoredJson.tree(written), "", fields);
    return fields;
  }

  private static void collect(JsonNode node, String at, Map<String, String> into) {
    if (node.has("text") && node.size() == 1) {
      into.put(at, node.get("text").asText());
    } else if (node.has("value") && node.has("unit") && node.size() == 2) {
      into.put(at, node.get("value").asText() + " " + node.get("unit").asText());
    } else if (node.isObject()) {
      node.properties().forEach(e -> collect(e.getValue(), at + "/" + e.getKey(), into));
    } else if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        collect(node.get(i), at + "/" + i, into);
      }
    } else if (!node.isNull()) {
      into.put(at, node.asText());
    }
  }

  /** The fewest lines taken away and put in; whole texts where they are too long to compare. */
  private static List<Line> lines(List<String> before, List<String> after) {
    int head = 0;
    int shorter = Math.min(before.size(), after.size());
    while (head < shorter && before.get(head).equals(after.get(head))) {
      head++;
    }
    int tail = 0;
    while (tail < shorter - head
        && before.get(before.size() - 1 - tail).equals(after.get(after.size() - 1 - tail))) {
      tail++;
    }
    List<Line> lines = new ArrayList<>();
    add(lines, Change.KEPT, before.subList(0, head));
    middle(
        lines,
        before.subList(head, before.size() - tail),
        after.subList(head, after.size() - tail));
    add(lines, Change.KEPT, before.subList(before.size() - tail, before.size()));
    return List.copyOf(lines);
  }

  private static void middle(List<Line> lines, List<String> old, List<String> now) {
    if (old.size() > COMPARED_LINES || now.size() > COMPARED_LINES) {
      add(lines, Change.GONE, old);
      add(lines, Change.NEW, now);
      return;
    }
    for (AbstractDelta<String> part : DiffUtils.diff(old, now, true).getDeltas()) {
      boolean same = part.getType() == DeltaType.EQUAL;
      add(lines, same ? Change.KEPT : Change.GONE, part.getSource().getLines());
      add(lines, Change.NEW, same ? List.of() : part.getTarget().getLines());
    }
  }

  private static void add(List<Line> lines, Change change, List<String> texts) {
    texts.forEach(text -> lines.add(new Line(change, text)));
  }
}
