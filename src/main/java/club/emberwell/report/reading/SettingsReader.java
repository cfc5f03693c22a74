package club.emberwell.report.reading;

import club.emberwell.bench.FieldReader;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Laser;
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
import java.util.Collection;
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

  /** What the laser may settle: not a range, nor two values. */
  private static final Set<RemarkId> ASKING =
      Set.of(
          RemarkId.UNIT_MISSING,
          RemarkId.UNIT_ASSUMED,
          RemarkId.UNIT_AMBIGUOUS,
          RemarkId.NUMBER_AMBIGUOUS,
          RemarkId.FRACTION_AMBIGUOUS);

  private final FieldReader in;
  private final Laser laser;

  private SettingsReader(FieldReader in, Laser laser) {
    this.in = in;
    this.laser = laser;
  }

  /**
   * Fields at fault are not given, with an error at their pointer below {@code at}.
   *
   * @param laser what it cannot be told is not asked about; null = not known
   */
  public static Settings read(FieldReader in, String at, WrittenSettings written, Laser laser) {
    if (in.required(at, written) == null) {
      return Settings.NONE;
    }
    return new SettingsReader(in, laser).read(at, written, true);
  }

  /** The same where none is needed. */
  public static Settings readSome(FieldReader in, String at, WrittenSettings written) {
    return new SettingsReader(in, null).read(at, written, false);
  }

  private Settings read(String at, WrittenSettings written, boolean whole) {
    Settings read = Settings.NONE;
    for (Setting setting : Setting.values()) {
      String pointer = at + "/" + setting.code();
      Object given = written.of(setting);
      if (whole && setting.form().isNeeded() && isAbsent(given)) {
        in.required(pointer, null);
      }
      read = read.with(setting, isAbsent(given) ? null : value(setting, pointer, given));
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
    return isAbsent(given) ? null : new SettingsReader(in, null).value(setting, at, given);
  }

  private static boolean isAbsent(Object given) {
    return given == null || given instanceof WrittenQuantity q && FieldReader.isAbsent(q);
  }

  private Object value(Setting setting, String at, Object given) {
    return switch (setting.value().shape()) {
      case QUANTITY -> quantity(setting, at, (WrittenQuantity) given);
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
  private Amount quantity(Setting setting, String at, WrittenQuantity written) {
    List<Basis> bases = setting.value().bases();
    Map<Basis, Reading<Quantity>> readings = new LinkedHashMap<>();
    bases.forEach(b -> readings.put(b, in.read(b.kind(), written, b.bounds())));
    Optional<Basis> clear = bases.stream().filter(b -> isClear(readings.get(b))).findFirst();
    if (clear.isPresent()) {
      return amount(clear.get(), at, readings.get(clear.get()));
    }
    List<Remark> telling = telling(readings.values());
    List<String> meant =
        telling.stream().allMatch(SettingsReader::asks) ? offered(telling) : List.of();
    List<String> possible = laser == null ? meant : PossibleReadings.of(laser, setting, meant);
    if (possible.size() == 1) {
      return only(bases, at, possible.get(0));
    }
    if (bases.size() == 1) {
      return amount(bases.get(0), at, readings.get(bases.get(0)));
    }
    in.add(neither(telling, readings.values()).at(at));
    return null;
  }

  private Amount amount(Basis basis, String at, Reading<Quantity> reading) {
    Double number = in.take(at, reading, basis.bounds());
    return number == null ? null : new Amount(basis.kind(), number);
  }

  /** The one reading that can be meant, with a note. */
  private Amount only(List<Basis> bases, String at, String text) {
    in.add(
        new Remark(
            RemarkId.UNIT_ASSUMED, Severity.INFO, at, "Read as " + text + ".", List.of(text)));
    return bases.stream()
        .flatMap(
            basis ->
                in.read(basis.kind(), WrittenQuantity.of(text), basis.bounds()).value().stream())
        .map(read -> new Amount(read.kind(), read.doubleValue()))
        .findFirst()
        .orElseThrow();
  }

  private static boolean isClear(Reading<Quantity> reading) {
    return reading.value().isPresent()
        && reading.remarks().stream().noneMatch(remark -> remark.is(RemarkId.UNIT_ASSUMED));
  }

  private static boolean asks(Remark remark) {
    return ASKING.stream().anyMatch(remark::is);
  }

  private static List<String> offered(List<Remark> remarks) {
    return remarks.stream().flatMap(r -> r.readings().stream()).distinct().toList();
  }

  private static List<Remark> telling(Collection<Reading<Quantity>> readings) {
    return readings.stream()
        .flatMap(reading -> reading.remarks().stream())
        .filter(remark -> OF_ANOTHER_KIND.stream().noneMatch(remark::is))
        .toList();
  }

  private static Remark neither(List<Remark> telling, Collection<Reading<Quantity>> readings) {
    if (telling.isEmpty()) {
      return readings.stream()
          .flatMap(reading -> reading.remarks().stream())
          .reduce((one, next) -> next)
          .orElseThrow();
    }
    Remark first = telling.stream().filter(Remark::isError).findFirst().orElse(telling.get(0));
    String detail =
        first.is(RemarkId.UNIT_MISSING) ? "Give the power in percent or in watts." : first.detail();
    return first.as(Severity.ERROR).with(detail, offered(telling));
  }
}
