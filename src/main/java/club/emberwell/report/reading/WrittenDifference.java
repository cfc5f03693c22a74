package club.emberwell.report.reading;

import club.emberwell.entry.Difference;
import java.util.Map;
import java.util.TreeMap;

/** What differs between two versions of a report, field by field. */
public final class WrittenDifference {
  private static final String ONLY_TRIAL = "/trials/0";

  private WrittenDifference() {}

  /** Empty where both say the same; what was confirmed does not count. */
  public static Difference between(WrittenReport before, WrittenReport after) {
    return Difference.between(fields(before), fields(after));
  }

  private static Map<String, String> fields(WrittenReport written) {
    Map<String, String> fields = new TreeMap<>(Difference.fields(written.withConfirmed(null)));
    if (!written.plain()) {
      return fields;
    }
    Map<String, String> plain = new TreeMap<>();
    fields.forEach(
        (field, text) ->
            plain.put(
                field.startsWith(ONLY_TRIAL) ? field.substring(ONLY_TRIAL.length()) : field, text));
    return plain;
  }
}
