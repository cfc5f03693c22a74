package club.emberwell.quantity;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** Which units go together: the dimension (VIM 1.7), which several kinds of quantity share. */
enum Dimension {
  SPEED,
  POWER,
  RATIO("%|1|10\\*-2"),
  LENGTH,
  /** Lengths, and lines or dots per length. */
  SPACING,
  FREQUENCY,
  TIME,
  AREAL_ENERGY,
  LINE_ENERGY,
  ENERGY,
  IRRADIANCE,
  FLOW,
  VOLUME,
  ANGLE("deg|m?rad"),
  ACCELERATION;

  private final Pattern ownCodes;

  Dimension() {
    this(null);
  }

  /**
   * @param ownCodes UCUM codes that make sense here and nowhere else, so that no others do
   */
  Dimension(String ownCodes) {
    this.ownCodes = ownCodes == null ? null : Pattern.compile(ownCodes);
  }

  /**
   * @param code in lower camel case, e.g. {@code arealEnergy}
   */
  static Dimension of(String code) {
    return valueOf(code.replaceAll("(?=[A-Z])", "_").toUpperCase(Locale.ROOT));
  }

  boolean isLength() {
    return this == LENGTH || this == SPACING;
  }

  /** Where only some codes make sense, those; empty where the units are composed of atoms. */
  Optional<Pattern> ownCodes() {
    return Optional.ofNullable(ownCodes);
  }
}
