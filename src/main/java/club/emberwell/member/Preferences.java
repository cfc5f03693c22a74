package club.emberwell.member;

import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.UnitPreferences;
import java.util.Optional;

/**
 * How one member reads and writes numbers.
 *
 * @param numberStyle how the member's own pages take {@code 1,000}
 * @param units chosen unit by dimension
 */
public record Preferences(NumberStyle numberStyle, UnitPreferences units) {
  static final String ANY = "any";
  private static final String POINT = "point";
  private static final String COMMA = "comma";

  /** Canonical units, ambiguous numbers asked back. */
  public static Preferences standard() {
    return new Preferences(NumberStyle.ANY, UnitPreferences.metric());
  }

  /** How the style is stored and spelled in the API: any, point, comma. */
  public String styleCode() {
    return switch (numberStyle) {
      case ANY -> ANY;
      case DECIMAL_POINT -> POINT;
      case DECIMAL_COMMA -> COMMA;
    };
  }

  /** Reads what {@link #styleCode()} wrote; empty for anything else. */
  public static Optional<NumberStyle> style(String code) {
    return switch (code) {
      case ANY -> Optional.of(NumberStyle.ANY);
      case POINT -> Optional.of(NumberStyle.DECIMAL_POINT);
      case COMMA -> Optional.of(NumberStyle.DECIMAL_COMMA);
      default -> Optional.empty();
    };
  }
}
