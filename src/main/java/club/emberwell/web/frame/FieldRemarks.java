package club.emberwell.web.frame;

import club.emberwell.remark.Remark;
import java.util.ArrayList;
import java.util.List;

/** What is said of a field, by how much it weighs. */
final class FieldRemarks {
  private final List<String> errors = new ArrayList<>();
  private final List<String> warnings = new ArrayList<>();
  private final List<String> notes = new ArrayList<>();
  private final List<String> readings = new ArrayList<>();

  void add(Remark remark) {
    switch (remark.severity()) {
      case ERROR -> errors.add(remark.detail());
      case WARNING -> warnings.add(remark.detail());
      case INFO -> {
        if (remark.tellsReading()) {
          notes.add(remark.detail());
        }
        return;
      }
      default -> throw new IllegalStateException("no such severity " + remark.severity());
    }
    readings.addAll(remark.readings());
  }

  List<String> errors() {
    return errors;
  }

  List<String> warnings() {
    return warnings;
  }

  /** What a number was read as, and what of the words beside it was left out. */
  List<String> notes() {
    return notes;
  }

  /** What an ambiguous value may mean, each to be taken by a press. */
  List<String> readings() {
    return readings;
  }
}
