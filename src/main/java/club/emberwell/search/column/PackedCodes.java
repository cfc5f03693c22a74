package club.emberwell.search.column;

import club.emberwell.laser.Direction;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Settings;
import club.emberwell.report.TrialSnapshot;

/**
 * The small codes of a trial in one long, so that a column read costs one lookup instead of twelve.
 * A code that can be missing is stored as code + 1, and 0 means not given.
 */
public enum PackedCodes {
  PROCESS(0, 4),
  BAND(4, 4),
  REGIME(8, 4),
  EFFECT(12, 3),
  MOTION(15, 3),
  AIR_ASSIST(18, 2),
  DIRECTION(20, 3),
  CROSS_PASS(23, 2),
  POWER_BASIS(25, 2),
  QUALITY(27, 4),
  PASSES(31, 31);

  /** Codes of POWER_BASIS. */
  static final int PERCENT = 0;

  static final int WATT = 1;

  private final int shift;
  private final long mask;

  PackedCodes(int shift, int bits) {
    this.shift = shift;
    this.mask = (1L << bits) - 1;
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
    return PROCESS.put(process.ordinal())
        | BAND.put(laser.band().ordinal())
        | REGIME.put(laser.regime().ordinal())
        | EFFECT.put(trial.effect().ordinal())
        | MOTION.optional(ordinal(laser.motion()))
        | AIR_ASSIST.optional(flag(settings.airAssist()))
        | DIRECTION.optional(ordinal(settings.direction()))
        | CROSS_PASS.optional(flag(settings.crossPass()))
        | POWER_BASIS.optional(basis(settings))
        | QUALITY.optional(trial.quality())
        | PASSES.put(settings.passes() == null ? 1 : settings.passes());
  }

  private static Integer basis(Settings settings) {
    if (settings.powerPercent() != null) {
      return PERCENT;
    }
    return settings.powerW() == null ? null : WATT;
  }

  private static Integer flag(Boolean value) {
    return value == null ? null : value ? 1 : 0;
  }

  private static Integer ordinal(Enum<?> value) {
    return value == null ? null : value.ordinal();
  }

  /** The name of a code, for the properties that live here. */
  static String label(TrialColumns.Property property, int code) {
    return switch (property) {
      case AIR_ASSIST, CROSS_PASS -> code == 1 ? "on" : "off";
      case DIRECTION -> Direction.values()[code].label();
      case MOTION -> Motion.values()[code].label();
      case POWER_BASIS -> code == WATT ? "given in W" : "given in %";
      default -> throw new IllegalArgumentException(property + " is not a packed code");
    };
  }

  public static Effect effect(long packed) {
    return Effect.values()[EFFECT.raw(packed)];
  }
}
