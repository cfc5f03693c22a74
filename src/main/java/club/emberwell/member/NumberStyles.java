package club.emberwell.member;

import club.emberwell.quantity.NumberStyle;
import java.util.Optional;

/** How number styles are stored and spelled in the API: any, point, comma. */
public final class NumberStyles {
  static final String ANY = "any";
  private static final String POINT = "point";
  private static final String COMMA = "comma";

  private NumberStyles() {}

  public static String code(NumberStyle style) {
    return switch (style) {
      case ANY -> ANY;
      case DECIMAL_POINT -> POINT;
      case DECIMAL_COMMA -> COMMA;
    };
  }

  /** Reads what {@link #code} wrote; empty for anything else. */
  public static Optional<NumberStyle> of(String code) {
    return switch (code) {
      case ANY -> Optional.of(NumberStyle.ANY);
      case POINT -> Optional.of(NumberStyle.DECIMAL_POINT);
      case COMMA -> Optional.of(NumberStyle.DECIMAL_COMMA);
      default -> Optional.empty();
    };
  }
}
