package club.emberwell.laser;

import club.emberwell.remark.Coded;
import java.util.Optional;

/**
 * Classes of rated power for facets and for "a laser like mine"; a bound belongs to the upper
 * class. The bounds are ours: each class spans a factor of two.
 */
public enum PowerClass implements Coded {
  UNDER_5("under-5", "under 5 W", 0),
  FROM_5("5-10", "5 to under 10 W", 5),
  FROM_10("10-20", "10 to under 20 W", 10),
  FROM_20("20-40", "20 to under 40 W", 20),
  FROM_40("40-80", "40 to under 80 W", 40),
  FROM_80("80-plus", "80 W and more", 80);

  private final String code;
  private final String label;
  private final double fromW;

  PowerClass(String code, String label, double fromW) {
    this.code = code;
    this.label = label;
    this.fromW = fromW;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** The class of a rated power in W; anything not positive counts as under 5 W. */
  public static PowerClass ofRated(double ratedPowerW) {
    PowerClass found = UNDER_5;
    for (PowerClass candidate : values()) {
      if (ratedPowerW >= candidate.fromW) {
        found = candidate;
      }
    }
    return found;
  }

  /** The value with this API code; spaces, case and underscores do not matter; empty if none. */
  public static Optional<PowerClass> of(String code) {
    return Codes.find(values(), PowerClass::code, code);
  }
}
