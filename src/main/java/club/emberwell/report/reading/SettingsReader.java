package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Basis;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.Quantity;
import club.emberwell.quantity.WrittenQuantity;
import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Severity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Reads settings from what was typed; what is needed and what may be missing the catalogue says.
 */
public final class SettingsReader {
  // Readings that say "this is no power (or no percent) at all", so the other reading counts.
  private static final Set<RemarkId> OF_ANOTHER_KIND =
      Set.of(RemarkId.UNIT_OF_OTHER_DIMENSION, RemarkId.UNIT_UNKNOWN);

  private final FieldReader in;

  private SettingsReader(FieldReader in) {
    this.in = in;
  }

  /** Fields at fault are not given, with an error at their pointer below {@code at}. */
  public static Settings read(FieldReader in, String at, WrittenSettings written) {
    if (in.required(at, written) == null) {
      return Settings.NONE;
    }
    return read(in, at, written, true);
  }

  /** The same where none is needed. */
  public static Settings readSome(FieldReader in, String at, WrittenSettings written) {
    return read(in, at, written, false);
  }

  private static Settings read(FieldReader in, String at, WrittenSettings written, boolean whole) {
    Settings read = Settings.NONE;
    for (Setting setting : Setting.values()) {
      String pointer = at + "/" + setting.code();
      Object given = written.of(setting);
      if (whole && setting.form().isNeeded() && isAbsent(given)) {
        in.required(pointer, null);
      }
      read = read.with(setting, read(in, setting, pointer, given));
    }
    return read;
  }

  /**
   * One value.
   *
   * @param at its pointer
   * @param given as in {@link WrittenSettings}
   * @return as in {@link Settings}; null where it is not given or at fault
   */
  public static Object read(FieldReader in, Setting setting, String at, Object given) {
    return isAbsent(given) ? null : new SettingsReader(in).value(setting, at, given);
  }

  private static boolean isAbsent(Object given) {
    return given == null || given instanceof WrittenQuantity q && FieldReader.isAbsent(q);
  }

  private Object value(Setting setting, String at, Object given) {
    return switch (setting.value().shape()) {
      case QUANTITY -> quantity(setting.value().bases(), at, (WrittenQuantity) given);
      case COUNT -> count(setting, at, (Integer) given);
      case FLAG -> given;
      case CHOICE -> choice(setting.value().choices(), at, (String) given);
    };
  }

  private Integer count(Setting setting, String at, Integer given) {
    Bounds bounds = setting.value().bounds();
    if (!bounds.hold(given)) {
      String detail =
          "%s are counted from %.0f to %.0f."
              .formatted(setting.label(), bounds.min(), bounds.max());
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, at, detail));
      return null;
    }
    return given;
  }

  private String choice(List<Choice> choices, String at, String given) {
    return in.choice(at, given, choices.stream().map(Choice::code).toList());
  }

  // "45 %" and "12 W" are both a power: the basis is what the unit says, never assumed.
  private Amount quantity(List<Basis> bases, String at, WrittenQuantity written) {
    Map<Basis, Reading<Quantity>> readings = new LinkedHashMap<>();
    bases.forEach(b -> readings.put(b, in.read(b.kind(), written, b.bounds())));
    List<Basis> possible = bases.stream().filter(b -> !offered(readings.get(b)).isEmpty()).toList();
    Optional<Basis> clear = bases.stream().filter(b -> isClear(readings.get(b))).findFirst();
    if (bases.size() == 1 || clear.isPresent() || isOnlyOne(possible, readings)) {
      Basis basis = clear.orElse(possible.isEmpty() ? bases.get(0) : possible.get(0));
      Double number = in.take(at, readings.get(basis), basis.bounds());
      return number == null ? null : new Amount(basis.kind(), number);
    }
    in.add(neither(List.copyOf(readings.values())).at(at));
    return null;
  }

  private static boolean isOnlyOne(List<Basis> possible, Map<Basis, Reading<Quantity>> readings) {
    return possible.size() == 1 && readings.get(possible.get(0)).value().isPresent();
  }

  private static boolean isClear(Reading<Quantity> reading) {
    return reading.value().isPresent() && offered(reading).isEmpty();
  }

  private static List<String> offered(Reading<Quantity> reading) {
    return reading.remarks().stream().flatMap(r -> r.readings().stream()).distinct().toList();
  }

  private static Remark neither(List<Reading<Quantity>> readings) {
    List<Remark> remarks = readings.stream().flatMap(r -> r.remarks().stream().limit(1)).toList();
    List<Remark> telling =
        remarks.stream().filter(remark -> OF_ANOTHER_KIND.stream().noneMatch(remark::is)).toList();
    if (telling.isEmpty()) {
      return remarks.get(remarks.size() - 1);
    }
    Remark first = telling.stream().filter(Remark::isError).findFirst().orElse(telling.get(0));
    if (telling.size() == 1) {
      return first;
    }
    List<String> all = telling.stream().flatMap(e -> e.readings().stream()).distinct().toList();
    String detail =
        first.is(RemarkId.UNIT_MISSING) ? "Give the power in percent or in watts." : first.detail();
    return first.as(Severity.ERROR).with(detail, all);
  }
}
