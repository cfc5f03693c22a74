package club.emberwell.consensus.range;

import club.emberwell.search.query.Property;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;

/** Words for the recorded properties that could explain a difference. */
public final class Recorded {
  /** Those that are compared value by value, in the order they are shown. */
  public static final List<Property> CONTRASTED =
      Stream.of(
              // differs within one work only where the coating alone decides
              Stream.of(Property.MATERIAL),
              // how often the lines are run is in the dose already
              Property.SETTINGS.stream().filter(p -> p != Property.CROSS_PASS),
              Stream.of(
                  Property.LENS, Property.CONTROLLER_VERSION, Property.SUPPLIER, Property.LOT))
          .flatMap(s -> s)
          .toList();

  /** Those whose values stand alone without the property's name. */
  private static final Set<Property> TELLING =
      Set.of(
          Property.COLOUR,
          Property.MATERIAL,
          Property.COATING,
          Property.RESULT_COLOUR,
          Property.DIRECTION,
          Property.MOTION);

  private Recorded() {}

  /** A value named so that it can stand alone: "white", "air assist on", "lens 50.8 mm". */
  public static String phrase(Property property, String value) {
    if (TELLING.contains(property)) {
      return value.substring(0, 1).toLowerCase(Locale.ROOT) + value.substring(1);
    }
    if (property == Property.POWER_BASIS) {
      return "power " + value;
    }
    return property.label() + " " + value;
  }
}
