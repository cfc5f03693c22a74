package club.emberwell.laser;

import club.emberwell.remark.Coded;
import java.util.Optional;

/** By pulse duration, after the letters D, I, R, M of EN 207 (fs split off at 10 ps). */
public enum Regime implements Coded {
  CW("cw", "continuous"),
  LONG("long", "long pulse"),
  NS("ns", "nanosecond"),
  PS("ps", "picosecond"),
  FS("fs", "femtosecond");

  private final String code;
  private final String label;

  Regime(String code, String label) {
    this.code = code;
    this.label = label;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  public boolean pulsed() {
    return this != CW;
  }

  /** The value with this API code; spaces, case and underscores do not matter; empty if none. */
  public static Optional<Regime> of(String code) {
    return Codes.find(values(), Regime::code, code);
  }

  /**
   * The regime a pulse duration in ns (FWHM) belongs to: cw above 0.25 s, long above 1 us, ns from
   * 1 ns, ps from 10 ps, fs below. The first three bounds are those of the letters D, I, R, M of EN
   * 207:2017 (read in encyclopaedia mirrors, not in the standard).
   *
   * @throws IllegalArgumentException where the duration is not a positive number
   */
  public static Regime ofPulseDuration(double ns) {
    if (!(ns > 0)) {
      throw new IllegalArgumentException("A pulse lasts longer than nothing, not " + ns + " ns");
    }
    if (ns > 0.25e9) {
      return CW;
    }
    if (ns > 1000) {
      return LONG;
    }
    if (ns >= 1) {
      return NS;
    }
    return ns >= 0.01 ? PS : FS;
  }
}
