package club.emberwell.search.column;

import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import club.emberwell.laser.SettingValue.Shape;
import club.emberwell.laser.Settings;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.search.query.Property;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The small codes of a trial in one long, so that a column read costs one lookup instead of twelve.
 * A code that can be missing is stored as code + 1, and 0 means not given.
 */
public final class PackedCodes {
  public static final PackedCodes PROCESS = new PackedCodes(0, 4);
  public static final PackedCodes BAND = new PackedCodes(4, 4);
  public static final PackedCodes REGIME = new PackedCodes(8, 4);
  public static final PackedCodes EFFECT = new PackedCodes(12, 3);
  public static final PackedCodes QUALITY = new PackedCodes(15, 4);
  public static final PackedCodes PASSES = new PackedCodes(19, 14);
  public static final PackedCodes MOTION = new PackedCodes(33, 3);
  private static final PackedCodes POWER_BASIS = new PackedCodes(36, 2);
  private static final int SETTINGS = 38;
  private static final int SETTING_BITS = 3;

  /** Codes of POWER_BASIS. */
  private static final int PERCENT = 0;

  private static final int WATT = 1;

  /** The settings that are flags or choices, by their place among the choices. */
  private static final Map<Setting, PackedCodes> OF_SETTING = ofSettings();

  /** Where a property lies that is packed here. */
  static final Map<Property, PackedCodes> OF_PROPERTY = ofProperties();

  private final int shift;
  private final long mask;

  private PackedCodes(int shift, int bits) {
    if (shift + bits > Long.SIZE) {
      throw new IllegalStateException("no room left for codes");
    }
    this.shift = shift;
    this.mask = (1L << bits) - 1;
  }

  private static Map<Setting, PackedCodes> ofSettings() {
    Map<Setting, PackedCodes> found = new EnumMap<>(Setting.class);
    for (Setting setting : Setting.values()) {
      if (!setting.value().choices().isEmpty()) {
        found.put(setting, new PackedCodes(SETTINGS + SETTING_BITS * found.size(), SETTING_BITS));
      }
    }
    return found;
  }

  private static Map<Property, PackedCodes> ofProperties() {
    Map<Property, PackedCodes> found = new HashMap<>();
    OF_SETTING.forEach((setting, codes) -> found.put(Property.of(setting), codes));
    found.put(Property.MOTION, MOTION);
    found.put(Property.POWER_BASIS, POWER_BASIS);
    return Map.copyOf(found);
  }

  /** The flags and choices of the settings with their codes, as they are packed here. */
  public static String catalogue() {
    return Stream.of(Setting.values())
        .filter(OF_SETTING::containsKey)
        .map(setting -> setting.code() + setting.value().choices())
        .collect(Collectors.joining());
  }

  /** The code as stored. */
  public int raw(long packed) {
    return (int) (packed >>> shift & mask);
  }

  /** The code, or -1 where not given. */
  public int code(long packed) {
    return raw(packed) - 1;
  }

  private long put(long code) {
    return (code & mask) << shift;
  }

  private long optional(Integer code) {
    return put(code == null ? 0 : code + 1L);
  }

  public static long pack(Process process, Laser laser, TrialSnapshot trial) {
    Settings settings = trial.settings();
    long packed =
        PROCESS.put(process.ordinal())
            | BAND.put(laser.band().ordinal())
            | REGIME.put(laser.regime().ordinal())
            | EFFECT.put(trial.effect().ordinal())
            | MOTION.optional(laser.motion() == null ? null : laser.motion().ordinal())
            | POWER_BASIS.optional(basis(settings))
            | QUALITY.optional(trial.quality())
            | PASSES.put(settings.passes());
    for (Map.Entry<Setting, PackedCodes> setting : OF_SETTING.entrySet()) {
      packed |= setting.getValue().optional(settings.place(setting.getKey()));
    }
    return packed;
  }

  private static Integer basis(Settings settings) {
    if (settings.powerPercent() != null) {
      return PERCENT;
    }
    return settings.powerW() == null ? null : WATT;
  }

  /** The name of a code, for the properties that live here. */
  static String label(Property property, int code) {
    if (property == Property.MOTION) {
      return Motion.values()[code].label();
    }
    if (property == Property.POWER_BASIS) {
      return code == WATT ? "given in W" : "given in %";
    }
    Setting setting = Setting.of(property.code()).orElseThrow();
    Choice choice = setting.value().choices().get(code);
    if (setting.value().shape() == Shape.FLAG) {
      return Boolean.parseBoolean(choice.code()) ? "on" : "off";
    }
    return choice.label();
  }

  public static Effect effect(long packed) {
    return Effect.values()[EFFECT.raw(packed)];
  }
}
