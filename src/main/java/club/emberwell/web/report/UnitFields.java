package club.emberwell.web.report;

import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Basis;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityReader;
import club.emberwell.quantity.UnitChoice;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Reading;
import club.emberwell.remark.RemarkId;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The units beside the numbers of a form: the one a member said is on, another is one tap away. It
 * counts for a number without a unit; a unit that is typed always wins.
 */
public final class UnitFields {
  private static final String PREFIX = "unit.";

  /** What most people set, by UCUM code; beside these the one a member said. */
  private static final Map<QuantityKind, List<String>> OFFERED =
      Map.of(
          QuantityKind.POWER_PERCENT, List.of("%"),
          QuantityKind.POWER, List.of("W"),
          QuantityKind.SPEED, List.of("mm/s", "mm/min", "[in_i]/s"),
          QuantityKind.LINE_SPACING, List.of("mm", "{dot}/[in_i]"),
          QuantityKind.REPETITION_RATE, List.of("kHz", "MHz"),
          QuantityKind.PULSE_DURATION, List.of("ns", "us"),
          QuantityKind.FOCUS_OFFSET, List.of("mm", "[in_i]"),
          QuantityKind.ANGLE, List.of("deg"),
          QuantityKind.THICKNESS, List.of("mm", "[in_i]"));

  private static final Map<String, List<QuantityKind>> KINDS = kinds();

  /** A number alone; whatever else stands there is a unit of its own. */
  private static final Pattern NUMBER = Pattern.compile("[+\\-\u2212]?[0-9][0-9.,]*");

  private UnitFields() {}

  private static Map<String, List<QuantityKind>> kinds() {
    Map<String, List<QuantityKind>> kinds = new LinkedHashMap<>();
    for (Setting setting : Setting.values()) {
      if (!setting.value().bases().isEmpty()) {
        kinds.put(
            SettingFields.name(setting),
            setting.value().bases().stream().map(Basis::kind).toList());
      }
    }
    WorkProperty.of(Shape.QUANTITY)
        .forEach(property -> kinds.put(property.code(), List.of(property.value().kind())));
    return kinds;
  }

  private static String name(String field) {
    return PREFIX + field;
  }

  /** Adds a field for the unit of each number that the form asks for. */
  static Form add(Form form, UnitPreferences said) {
    KINDS.forEach(
        (name, kinds) ->
            form.find(name)
                .ifPresent(
                    field -> {
                      Field unit = field(name, field.getLabel(), kinds, said);
                      field.inUnit(unit);
                      form.add(unit);
                    }));
    return form;
  }

  private static Field field(
      String name, String label, List<QuantityKind> kinds, UnitPreferences said) {
    List<String> labels =
        kinds.stream()
            .flatMap(kind -> offered(kind, said).stream().map(UnitChoice::label))
            .distinct()
            .toList();
    String on =
        kinds.stream()
            .filter(said::isStated)
            .map(kind -> said.unit(kind).label())
            .findFirst()
            .orElse(labels.size() == 1 ? labels.get(0) : "");
    return Field.of(name(name), "Unit: " + label)
        .choices(labels, text -> text, text -> text)
        .value(on);
  }

  private static List<UnitChoice> offered(QuantityKind kind, UnitPreferences said) {
    List<String> usual = OFFERED.getOrDefault(kind, List.of(kind.canonicalUnit()));
    Stream<String> codes =
        said.isStated(kind)
            ? Stream.concat(Stream.of(said.unit(kind).code()), usual.stream())
            : usual.stream();
    return codes.distinct().map(code -> choice(kind, code)).toList();
  }

  private static UnitChoice choice(QuantityKind kind, String code) {
    return UnitPreferences.choices(kind).stream()
        .filter(choice -> choice.code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  /** Parts what is known beforehand: the number into its field, the unit beside it. */
  public static Form part(Form form) {
    KINDS
        .keySet()
        .forEach(
            name ->
                form.find(name)
                    .filter(field -> !field.getValue().isEmpty())
                    .ifPresent(field -> part(field, field.getUnit())));
    return form;
  }

  private static void part(Field field, Field unit) {
    String text = field.getValue();
    Optional<String> own = own(text, unit);
    unit.value(own.orElse(""));
    own.ifPresent(label -> field.value(text.substring(0, text.length() - label.length()).strip()));
  }

  /** Beside a number that brings its unit that one is on, or none. */
  public static Form follow(Form form) {
    KINDS.forEach(
        (name, kinds) ->
            form.find(name)
                .filter(field -> !field.getValue().isEmpty())
                .filter(field -> !isBare(kinds, field.getValue(), NumberStyle.ANY))
                .ifPresent(
                    field -> {
                      Field unit = field.getUnit();
                      unit.value(own(field.getValue(), unit).orElse(""));
                    }));
    return form;
  }

  private static Optional<String> own(String text, Field unit) {
    return unit.getOptions().stream()
        .map(Field.Option::value)
        .filter(label -> text.endsWith(" " + label))
        .filter(
            label ->
                NUMBER.matcher(text.substring(0, text.length() - label.length()).strip()).matches())
        .findFirst();
  }

  private static boolean isBare(List<QuantityKind> kinds, String text, NumberStyle style) {
    List<Reading<Quantity>> readings = read(kinds, text, style);
    return readings.stream().allMatch(r -> r.value().isEmpty() || is(r, RemarkId.UNIT_ASSUMED))
        && readings.stream()
            .anyMatch(r -> is(r, RemarkId.UNIT_ASSUMED) || is(r, RemarkId.UNIT_MISSING));
  }

  private static boolean is(Reading<Quantity> reading, RemarkId id) {
    return reading.remarks().stream().anyMatch(remark -> remark.is(id));
  }

  private static List<Reading<Quantity>> read(
      List<QuantityKind> kinds, String text, NumberStyle style) {
    return kinds.stream().map(kind -> QuantityReader.read(kind, text, style)).toList();
  }

  /** What was sent as a number, with the unit that was on beside it, unless it brings its own. */
  static WrittenQuantity sent(SentForm sent, String name, NumberStyle style) {
    WrittenQuantity typed = sent.quantity(name);
    List<QuantityKind> kinds = KINDS.get(name);
    if (typed == null || !isBare(kinds, typed.text(), style)) {
      return typed;
    }
    return on(sent.text(name(name)), kinds)
        .map(label -> WrittenQuantity.of(typed.text() + " " + label))
        .orElse(typed);
  }

  private static Optional<String> on(String label, List<QuantityKind> kinds) {
    return kinds.stream()
        .flatMap(kind -> UnitPreferences.choices(kind).stream())
        .map(UnitChoice::label)
        .filter(known -> known.equals(label))
        .findFirst();
  }
}
