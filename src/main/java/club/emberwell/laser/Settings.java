package club.emberwell.laser;

import club.emberwell.laser.SettingValue.Basis;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.laser.SettingValue.Shape;
import club.emberwell.quantity.QuantityKind;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a machine was set to. A value; what is not given is not in it.
 *
 * @param values by their shape an {@link Amount}, an Integer, a Boolean or a choice's code
 */
public record Settings(Map<Setting, Object> values) {
  public static final Settings NONE = new Settings(Map.of());

  public Settings {
    Map<Setting, Object> copy = new EnumMap<>(Setting.class);
    copy.putAll(values);
    values = Collections.unmodifiableMap(copy);
  }

  /** Only a power, in W. */
  public static Settings ofWatts(Double watts) {
    return NONE.atWatts(watts);
  }

  /** The same at another power in W. */
  public Settings atWatts(Double watts) {
    return with(Setting.POWER, watts == null ? null : new Amount(QuantityKind.POWER, watts));
  }

  /**
   * The same but for one value.
   *
   * @param value as in {@link #values}, a bare number for a quantity of one kind; null = not given
   */
  public Settings with(Setting setting, Object value) {
    Map<Setting, Object> copy = new EnumMap<>(Setting.class);
    copy.putAll(values);
    if (value == null) {
      copy.remove(setting);
    } else {
      copy.put(setting, kept(setting, value));
    }
    return new Settings(copy);
  }

  private static Object kept(Setting setting, Object value) {
    return setting.value().shape() == Shape.QUANTITY && value instanceof Number number
        ? new Amount(setting.value().kind().orElseThrow(), number.doubleValue())
        : value;
  }

  /** The same but for a quantity or a whole number; null = not given. */
  public Settings withNumber(Setting setting, Double number) {
    boolean whole = number != null && setting.value().shape() == Shape.COUNT;
    return with(setting, whole ? (Object) (int) Math.round(number) : number);
  }

  /** The same but for a flag or a choice; a place that is none of its choices = not given. */
  public Settings atPlace(Setting setting, int place) {
    List<Choice> choices = setting.value().choices();
    if (place < 0 || place >= choices.size()) {
      return with(setting, null);
    }
    String code = choices.get(place).code();
    boolean flag = setting.value().shape() == Shape.FLAG;
    return with(setting, flag ? (Object) Boolean.valueOf(code) : code);
  }

  /** The same with what is not given taken from others. */
  public Settings or(Settings others) {
    Map<Setting, Object> all = new EnumMap<>(Setting.class);
    all.putAll(others.values);
    all.putAll(values);
    return new Settings(all);
  }

  /** A quantity; null where it is not given. */
  public Amount amount(Setting setting) {
    return (Amount) values.get(setting);
  }

  /** A quantity or a whole number in the canonical unit; null where it is not given. */
  public Double number(Setting setting) {
    Object value = values.get(setting);
    if (value instanceof Amount amount) {
      return amount.number();
    }
    return value == null ? null : Double.valueOf(((Number) value).doubleValue());
  }

  /** The place of a flag's or choice's value among the choices; null where it is not given. */
  public Integer place(Setting setting) {
    return setting
        .value()
        .choice(values.get(setting))
        .map(setting.value().choices()::indexOf)
        .orElse(null);
  }

  /** Canonical numbers, flags and words by code; a power's code says its basis. */
  public Map<String, Object> byCode() {
    Map<String, Object> byCode = new LinkedHashMap<>();
    values.forEach(
        (setting, value) -> {
          if (value instanceof Amount amount) {
            byCode.put(code(setting, setting.value().basis(amount.kind())), amount.number());
          } else {
            byCode.put(setting.code(), value);
          }
        });
    return byCode;
  }

  /** The counterpart of {@link #byCode}; codes that are none are left out. */
  public static Settings ofCodes(Map<String, ?> byCode) {
    Settings read = NONE;
    for (Setting setting : Setting.values()) {
      for (Basis basis : setting.value().bases()) {
        if (byCode.get(code(setting, basis)) instanceof Number number) {
          read = read.with(setting, new Amount(basis.kind(), number.doubleValue()));
        }
      }
      if (setting.value().shape() != Shape.QUANTITY) {
        read = read.with(setting, byCode.get(setting.code()));
      }
    }
    return read;
  }

  private static String code(Setting setting, Basis basis) {
    return basis.code() == null ? setting.code() : basis.code();
  }

  /** % of the rated power; null where power is given in W. */
  public Double powerPercent() {
    return power(QuantityKind.POWER_PERCENT);
  }

  /** W; null where power is given in percent. */
  public Double powerW() {
    return power(QuantityKind.POWER);
  }

  private Double power(QuantityKind basis) {
    Amount power = amount(Setting.POWER);
    return power == null || power.kind() != basis ? null : Double.valueOf(power.number());
  }

  public Double speedMmS() {
    return number(Setting.SPEED);
  }

  public Double lineSpacingMm() {
    return number(Setting.LINE_SPACING);
  }

  public Double repetitionRateKhz() {
    return number(Setting.REPETITION_RATE);
  }

  public Double pulseDurationNs() {
    return number(Setting.PULSE_DURATION);
  }

  /** How often the same lines are run; not given = 1. */
  public int passes() {
    Double passes = number(Setting.PASSES);
    return passes == null ? 1 : passes.intValue();
  }

  /** Whether the filled area was run a second time across. */
  public boolean crossed() {
    return Boolean.TRUE.equals(values.get(Setting.CROSS_PASS));
  }
}
