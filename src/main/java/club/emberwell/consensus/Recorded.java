package club.emberwell.consensus;

import club.emberwell.search.column.TrialColumns.Property;
import java.util.List;
import java.util.Locale;

/** Words for the recorded properties that could explain a difference. */
public final class Recorded {
  /** Those that are compared value by value, in the order they are shown. */
  public static final List<Property> CONTRASTED =
      List.of(
          Property.COLOUR,
          Property.AIR_ASSIST,
          Property.DIRECTION,
          Property.LENS,
          Property.CONTROLLER_VERSION,
          Property.LOT);

  private Recorded() {}

  /** The word in the API. */
  public static String code(Property property) {
    return switch (property) {
      case AIR_ASSIST -> "airAssist";
      case DIRECTION -> "direction";
      case CROSS_PASS -> "crossPass";
      case LENS -> "lens";
      case MATERIAL -> "material";
      case COATING -> "coating";
      case COLOUR -> "colour";
      case LOT -> "lot";
      case CONTROLLER_VERSION -> "controllerVersion";
      case MOTION -> "motion";
      case POWER_BASIS -> "powerBasis";
    };
  }

  /** The word on pages, in the middle of a sentence. */
  public static String label(Property property) {
    return switch (property) {
      case AIR_ASSIST -> "air assist";
      case DIRECTION -> "direction";
      case CROSS_PASS -> "cross pass";
      case LENS -> "lens";
      case MATERIAL -> "material";
      case COATING -> "coating";
      case COLOUR -> "colour";
      case LOT -> "supplier's lot";
      case CONTROLLER_VERSION -> "controller version";
      case MOTION -> "motion";
      case POWER_BASIS -> "how the power is stated";
    };
  }

  /** A value named so that it can stand alone: "white", "air assist on", "lens 50.8 mm". */
  public static String phrase(Property property, String value) {
    return switch (property) {
      case COLOUR, MATERIAL, COATING, DIRECTION, MOTION ->
          value.substring(0, 1).toLowerCase(Locale.ROOT) + value.substring(1);
      case POWER_BASIS -> "power " + value;
      case LOT -> "lot " + value;
      default -> label(property) + " " + value;
    };
  }
}
