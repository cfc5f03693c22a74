package club.emberwell.talk;

import club.emberwell.entry.Difference;
import java.util.Map;

/** What differs between two versions of talk: title and ties by field, the text by line. */
public final class TalkDifference {
  private TalkDifference() {}

  public static Difference between(WrittenTalk before, WrittenTalk after) {
    return Difference.between(fields(before), fields(after)).with(before.text(), after.text());
  }

  private static Map<String, String> fields(WrittenTalk written) {
    Map<String, String> fields = Difference.fields(written);
    fields.remove("/text");
    return fields;
  }
}
