package club.emberwell.web.report;

import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Remark;
import club.emberwell.report.WrittenReport;
import club.emberwell.report.WrittenSettings;
import club.emberwell.report.WrittenTrial;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What a sent form says, as an entry in its author's own words. */
final class ReportFormReader {
  /** A button that puts one of the offered readings into its field. */
  private static final String USE = "use:";

  private final Map<String, String> values = new LinkedHashMap<>();
  private final List<Remark> remarks = new ArrayList<>();
  private final List<String> confirmed;
  private final boolean onlyAsked;

  ReportFormReader(MultivaluedMap<String, String> sent) {
    sent.forEach((name, all) -> values.put(name, all.isEmpty() ? "" : all.get(0).strip()));
    confirmed = sent.getOrDefault("confirmed", List.of());
    onlyAsked =
        values.keySet().stream().filter(name -> name.startsWith(USE)).toList().stream()
            .peek(name -> values.put(name.substring(USE.length()), values.get(name)))
            .findAny()
            .isPresent();
  }

  /** Everything typed, by field name, for showing the form again. */
  Map<String, String> values() {
    return values;
  }

  /** True where the press was on an offered reading: show the form again, store nothing. */
  boolean onlyAsked() {
    return onlyAsked;
  }

  /** What cannot even be written down as an entry, such as letters for passes. */
  List<Remark> remarks() {
    return remarks;
  }

  WrittenReport written(UUID repeatOf) {
    WrittenSettings settings =
        new WrittenSettings(
            quantity("settings.power"),
            quantity("settings.speed"),
            quantity("settings.lineSpacing"),
            number("settings.passes"),
            quantity("settings.repetitionRate"),
            quantity("settings.pulseDuration"),
            quantity("settings.focusOffset"),
            flag("settings.airAssist"),
            text("settings.direction"),
            flag("settings.crossPass"));
    WrittenTrial trial =
        new WrittenTrial(null, null, settings, text("effect"), number("quality"), defects());
    return new WrittenReport(
        machine(),
        null,
        text("material"),
        text("coating"),
        text("colour"),
        quantity("thickness"),
        text("process"),
        List.of(trial),
        text("notes"),
        text("lot"),
        text("controllerVersion"),
        repeatOf,
        confirmed);
  }

  private UUID machine() {
    String text = text("machine");
    if (text == null) {
      return null;
    }
    try {
      return UUID.fromString(text);
    } catch (IllegalArgumentException e) {
      remarks.add(Remark.error("machine-unknown", "/machine", "Choose one of your machines."));
      return null;
    }
  }

  private List<String> defects() {
    String text = text("defects");
    return text == null
        ? List.of()
        : List.of(text.split("\\s*,\\s*")).stream().filter(d -> !d.isBlank()).toList();
  }

  private String text(String name) {
    String value = values.get(name);
    return value == null || value.isEmpty() ? null : value;
  }

  private WrittenQuantity quantity(String name) {
    String text = text(name);
    return text == null ? null : WrittenQuantity.of(text);
  }

  private Boolean flag(String name) {
    String text = text(name);
    return text == null ? null : Boolean.valueOf(text.equals("true"));
  }

  private Integer number(String name) {
    String text = text(name);
    if (text == null) {
      return null;
    }
    try {
      return Integer.valueOf(text);
    } catch (NumberFormatException e) {
      remarks.add(
          Remark.error(
              "not-a-whole-number", "/" + name.replace('.', '/'), "A whole number, such as 2."));
      return null;
    }
  }
}
