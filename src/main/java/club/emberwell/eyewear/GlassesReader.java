package club.emberwell.eyewear;

import club.emberwell.bench.FieldReader;
import club.emberwell.laser.safety.MarkingReader;
import club.emberwell.laser.safety.Protection;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import java.util.ArrayList;
import java.util.List;

/** Reads a pair of glasses as written into what is stored; pure. */
final class GlassesReader {
  private static final String MARKING = "/marking";

  private GlassesReader() {}

  /**
   * The glasses with their texts trimmed.
   *
   * @throws EntryRefused with a remark for every field at fault and every line that says nothing
   */
  static WrittenGlasses read(WrittenGlasses w) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    String name = in.text("/name", in.required("/name", w.name()), EyewearLimits.NAME, false);
    String marking =
        in.text(MARKING, in.required(MARKING, w.marking()), EyewearLimits.MARKING, true);
    String notes = in.text("/notes", w.notes(), EyewearLimits.NOTES, true);
    if (marking != null) {
      faults(marking).forEach(in::add);
    }
    Remarks.refuse(in.remarks());
    return new WrittenGlasses(name, marking, notes);
  }

  private static List<Remark> faults(String marking) {
    List<String> lines = lines(marking);
    if (lines.size() > EyewearLimits.LINES) {
      String detail = "At most %d lines fit here.".formatted(EyewearLimits.LINES);
      return List.of(Remark.error(RemarkId.TOO_MANY, MARKING, detail));
    }
    List<Remark> faults = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String where = lines.size() == 1 ? "" : "Line %d: ".formatted(i + 1);
      MarkingReader.line(lines.get(i)).remarks().stream()
          .filter(Remark::isError)
          .map(r -> r.at(MARKING).with(where + r.detail(), List.of()))
          .forEach(faults::add);
    }
    return faults;
  }

  /** What a marking that was stored means; lines no longer understood say nothing. */
  static List<Protection> printed(String marking) {
    return lines(marking).stream()
        .map(MarkingReader::line)
        .map(Reading::value)
        .flatMap(found -> found.stream().flatMap(List::stream))
        .toList();
  }

  /** What of such a marking was left out. */
  static List<Remark> remarks(String marking) {
    return lines(marking).stream()
        .flatMap(line -> MarkingReader.line(line).remarks().stream())
        .map(remark -> remark.at(MARKING))
        .toList();
  }

  /** The lines with something in them. */
  private static List<String> lines(String marking) {
    return marking.lines().map(String::strip).filter(line -> !line.isEmpty()).toList();
  }
}
