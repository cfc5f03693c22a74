package club.emberwell.report;

import club.emberwell.bench.StoredJson;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;

/** What differs between two versions of an entry, field by field, in the words that were typed. */
public final class WrittenDifference {
  private static final String ONLY_TRIAL = "/trials/0";

  private WrittenDifference() {}

  /** Empty where both say the same; what was confirmed does not count. */
  public static List<FieldChange> between(WrittenReport before, WrittenReport after) {
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
    return List.copyOf(changes);
  }

  private static Map<String, String> fields(WrittenReport written) {
    Map<String, String> fields = new TreeMap<>();
    collect(StoredJson.tree(written.withConfirmed(null)), "", fields);
    if (written.trials() == null || !TrialStep.isPlain(written.trials())) {
      return fields;
    }
    Map<String, String> plain = new TreeMap<>();
    fields.forEach(
        (field, text) ->
            plain.put(
                field.startsWith(ONLY_TRIAL) ? field.substring(ONLY_TRIAL.length()) : field, text));
    return plain;
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
}
