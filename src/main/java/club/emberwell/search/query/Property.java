package club.emberwell.search.query;

import club.emberwell.laser.Setting;
import club.emberwell.laser.SettingValue.Choice;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A recorded property that could explain why voices differ: first the settings that are flags or
 * choices, then what is known beside them.
 */
public final class Property {
  private static final List<Property> ALL = new ArrayList<>();

  /** What a machine was set to. */
  public static final List<Property> SETTINGS = settings();

  public static final Property AIR_ASSIST = of(Setting.AIR_ASSIST);
  public static final Property DIRECTION = of(Setting.DIRECTION);
  public static final Property CROSS_PASS = of(Setting.CROSS_PASS);
  public static final Property LENS = new Property("lens", "lens");

  public static final Property UNFILED = new Property("unfiled", "words not filed yet");

  /** What a search can be narrowed by of the work. */
  public static final Map<Property, Facet> WORK = work();

  public static final Property MATERIAL = of(Facet.MATERIAL.code());
  public static final Property COATING = of(Facet.COATING.code());
  public static final Property COLOUR = of(Facet.COLOUR.code());

  /** By its class, see {@link club.emberwell.catalog.ThicknessClass}. */
  public static final Property THICKNESS_CLASS = of(Facet.THICKNESS.code());

  public static final Property RESULT_COLOUR = of(Facet.RESULT_COLOUR.code());
  public static final Property LOT = of(Facet.LOT.code());
  public static final Property SUPPLIER = of(Facet.SUPPLIER.code());
  public static final Property CONTROLLER_VERSION = of(Facet.CONTROLLER_VERSION.code());
  public static final Property MOTION = new Property("motion", "motion");
  public static final Property POWER_BASIS = new Property("powerBasis", "how the power is stated");

  private final int place;
  private final String code;
  private final String label;

  private Property(String code, String label) {
    this.place = ALL.size();
    this.code = code;
    this.label = label;
    ALL.add(this);
  }

  private static List<Property> settings() {
    for (Setting setting : Setting.values()) {
      if (!setting.value().choices().isEmpty()) {
        new Property(setting.code(), words(setting));
      }
    }
    return List.copyOf(ALL);
  }

  private static Map<Property, Facet> work() {
    Map<Property, Facet> found = new HashMap<>();
    for (Facet facet : Facet.values()) {
      if (facet.work().isPresent()) {
        found.put(new Property(facet.code(), facet.label().toLowerCase(Locale.ROOT)), facet);
      }
    }
    return Map.copyOf(found);
  }

  /** In the middle of a sentence: as a line about a trial says it, where it does. */
  private static String words(Setting setting) {
    Choice first = setting.value().choices().get(0);
    return first.inLine() == null ? setting.label().toLowerCase(Locale.ROOT) : first.inLine();
  }

  /** The property of a setting that is a flag or a choice. */
  public static Property of(Setting setting) {
    return of(setting.code());
  }

  /** The property with exactly this code. */
  public static Property of(String code) {
    return ALL.stream().filter(p -> p.code.equals(code)).findFirst().orElseThrow();
  }

  public static List<Property> all() {
    return List.copyOf(ALL);
  }

  /** Its place among all. */
  public int place() {
    return place;
  }

  /** The word in the API. */
  public String code() {
    return code;
  }

  /** The word on pages, in the middle of a sentence. */
  public String label() {
    return label;
  }

  @Override
  public String toString() {
    return code;
  }
}
