package club.emberwell.web.talk;

import club.emberwell.report.FieldChange;
import club.emberwell.talk.TalkDifference;
import club.emberwell.talk.WrittenTalk;
import java.util.List;
import java.util.Map;

/**
 * What differs between two texts, in the words of the form.
 *
 * @param fields title and ties
 * @param lines of the text, empty where it is the same
 */
record Changes(List<FieldChange> fields, List<Line> lines) {
  private static final Map<String, String> LABELS =
      Map.of(
          "/title", "Title",
          "/ties/material", "Material",
          "/ties/coating", "Coating",
          "/ties/source", "Laser source",
          "/ties/process", "Process",
          "/ties/machineModel", "Kind of machine",
          "/ties/controllerVersion", "Controller version",
          "/ties/report", "Report");

  /**
   * A line of either text.
   *
   * @param change {@code kept}, {@code gone} or {@code new}
   */
  record Line(String change, String text) {}

  static Changes between(WrittenTalk before, WrittenTalk after) {
    TalkDifference difference = TalkDifference.between(before, after);
    return new Changes(
        difference.fields().stream()
            .map(
                f ->
                    new FieldChange(
                        LABELS.getOrDefault(f.field(), f.field()), f.before(), f.after()))
            .toList(),
        difference.lines().stream().map(l -> new Line(word(l.change()), l.text())).toList());
  }

  private static String word(TalkDifference.Change change) {
    return switch (change) {
      case KEPT -> "kept";
      case GONE -> "gone";
      case NEW -> "new";
    };
  }

  public boolean isEmpty() {
    return fields.isEmpty() && lines.isEmpty();
  }
}
