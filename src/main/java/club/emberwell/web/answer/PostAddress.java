package club.emberwell.web.answer;

import club.emberwell.catalog.ThicknessClass;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.consensus.range.WorkKey;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.report.reading.WorkProperty;
import club.emberwell.report.reading.WorkValue.Shape;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.report.SettingFields;
import java.util.Map;
import java.util.StringJoiner;
import java.util.UUID;

/** The forms for a result, a recipe and a test grid, filled with what the answer said. */
final class PostAddress {
  private PostAddress() {}

  /**
   * The form for a result.
   *
   * @param material where the work does not ask, as coatings come off alike from most; null =
   *     unknown
   */
  static String of(
      RangeKey key, UUID machine, String material, Settings settings, UnitPreferences reader) {
    return filled("/post?", key, machine, material, settings, reader);
  }

  /** The form for a recipe; parameters as above. */
  static String recipe(
      RangeKey key, UUID machine, String material, Settings settings, UnitPreferences reader) {
    return filled("/recipes/new?", key, machine, material, settings, reader);
  }

  private static String filled(
      String form,
      RangeKey key,
      UUID machine,
      String material,
      Settings settings,
      UnitPreferences reader) {
    StringJoiner address = new StringJoiner("&", form, "");
    work(address, key, machine);
    material(address, key, material);
    settings
        .values()
        .forEach(
            (setting, value) -> add(address, SettingFields.name(setting), typed(value, reader)));
    return address.toString();
  }

  /**
   * The plan of a test grid for such work; what else it needs it finds by itself.
   *
   * @param material where the work does not ask; null = unknown
   */
  static String plan(RangeKey key, UUID machine, String material) {
    StringJoiner address = new StringJoiner("&", "/grids/plan?", "");
    work(address, key, machine);
    material(address, key, material);
    key.work()
        .part(Facet.THICKNESS)
        .flatMap(part -> ThicknessClass.of(part.value()))
        .map(ThicknessClass::nominalMm)
        .ifPresent(mm -> add(address, WorkProperty.THICKNESS.code(), mm + " mm"));
    return address.toString();
  }

  private static void material(StringJoiner address, RangeKey key, String material) {
    if (material != null && key.work().part(Facet.MATERIAL).isEmpty()) {
      add(address, WorkProperty.MATERIAL.code(), material);
    }
  }

  private static void work(StringJoiner address, RangeKey key, UUID machine) {
    add(address, "machine", machine.toString());
    add(address, "process", key.process().code());
    for (Map.Entry<Facet, WorkKey.Part> part : key.work().parts().entrySet()) {
      WorkProperty property = part.getKey().work().orElseThrow();
      if (part.getValue().stated() && property.value().shape() == Shape.WORD) {
        add(address, property.code(), part.getValue().label());
      }
    }
  }

  private static String typed(Object value, UnitPreferences reader) {
    return value instanceof Amount amount
        ? QuantityPrinter.print(amount.number(), amount.kind(), reader)
        : value.toString();
  }

  private static void add(StringJoiner address, String name, String value) {
    address.add(name + "=" + QueryString.encoded(value));
  }
}
