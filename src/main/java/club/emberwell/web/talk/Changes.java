package club.emberwell.web.talk;

import club.emberwell.entry.Difference;
import club.emberwell.entry.FieldChange;
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
record Changes(List<FieldChange> fields, List<Difference.Line> lines) {
  private static final Map<String, String> LABELS =
      Map.of(
          "/title", "Title",
          "/ties/material", "Material",
          "/ties/coating", "Coating",
          "/ties/source", "Type of laser",
          "/ties/process", "Process",
          "/ties/machineModel", "Machine model",
          "/ties/controllerVersion", "Firmware or software version",
          "/ties/report", "Report");

  static Changes between(WrittenTalk before, WrittenTalk after) {
    return of(TalkDifference.between(before, after));
  }

  static Changes of(Difference difference) {
    return new Changes(
        difference.fields().stream()
            .map(
                f ->
                    new FieldChange(
                        LABELS.getOrDefault(f.field(), f.field()), f.before(), f.after()))
            .toList(),
        difference.lines());
  }

  public boolean isEmpty() {
    return fields.isEmpty() && lines.isEmpty();
  }
}
