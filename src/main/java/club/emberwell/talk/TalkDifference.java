package club.emberwell.talk;

import club.emberwell.bench.StoredJson;
import club.emberwell.report.FieldChange;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * What differs between two versions of an entry.
 *
 * @param fields title and ties, in the words that were typed
 * @param lines of the text, in order; empty where the text is the same
 */
public record TalkDifference(List<FieldChange> fields, List<Line> lines) {

  /** What became of a line. */
  public enum Change {
    KEPT,
    GONE,
    NEW
  }

  /** One line of either text. */
  public record Line(Change change, String text) {}

  public static TalkDifference between(WrittenTalk before, WrittenTalk after) {
    Map<String, String> old = fields(before);
    Map<String, String> now = fields(after);
    Set<String> all = new LinkedHashSet<>(old.keySet());
    all.addAll(now.keySet());
    List<FieldChange> changes = new ArrayList<>();
    for (String field : all) {
      if (!Objects.equals(old.get(field), now.get(field))) {
        changes.add(new FieldChange(field, old.get(field), now.get(field)));
      }
    }
    List<Line> lines =
        before.text().equals(after.text())
            ? List.of()
            : lines(before.text().lines().toList(), after.text().lines().toList());
    return new TalkDifference(List.copyOf(changes), lines);
  }

  public boolean isEmpty() {
    return fields.isEmpty() && lines.isEmpty();
  }

  private static Map<String, String> fields(WrittenTalk written) {
    Map<String, String> fields = new LinkedHashMap<>();
    if (written.title() != null) {
      fields.put("/title", written.title());
    }
    JsonNode ties = StoredJson.tree(written.ties());
    ties.properties().forEach(tie -> fields.put("/ties/" + tie.getKey(), tie.getValue().asText()));
    return fields;
  }

  /** The fewest lines taken away and put in; whole texts where they are too long to compare. */
  static List<Line> lines(List<String> before, List<String> after) {
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
    if (old.size() > TalkLimits.COMPARED_LINES || now.size() > TalkLimits.COMPARED_LINES) {
      add(lines, Change.GONE, old);
      add(lines, Change.NEW, now);
      return;
    }
    int[][] common = commonLines(old, now);
    int i = 0;
    int j = 0;
    while (i < old.size() && j < now.size()) {
      if (old.get(i).equals(now.get(j))) {
        lines.add(new Line(Change.KEPT, old.get(i++)));
        j++;
      } else if (common[i + 1][j] >= common[i][j + 1]) {
        lines.add(new Line(Change.GONE, old.get(i++)));
      } else {
        lines.add(new Line(Change.NEW, now.get(j++)));
      }
    }
    add(lines, Change.GONE, old.subList(i, old.size()));
    add(lines, Change.NEW, now.subList(j, now.size()));
  }

  /** Length of the longest common sequence behind each pair of places. */
  private static int[][] commonLines(List<String> old, List<String> now) {
    int[][] common = new int[old.size() + 1][now.size() + 1];
    for (int i = old.size() - 1; i >= 0; i--) {
      for (int j = now.size() - 1; j >= 0; j--) {
        common[i][j] =
            old.get(i).equals(now.get(j))
                ? common[i + 1][j + 1] + 1
                : Math.max(common[i + 1][j], common[i][j + 1]);
      }
    }
    return common;
  }

  private static void add(List<Line> lines, Change change, List<String> texts) {
    texts.forEach(text -> lines.add(new Line(change, text)));
  }
}
