package club.emberwell.matrix;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What is burned, and how fast: the bodies that are sent of it. */
record Matter(String material, String coating, String speed) {
  static final Matter PLAIN = new Matter("maple", null, "400 mm/s");

  String word() {
    return material.replace(' ', '+');
  }

  /** A recipe for a machine of one's own. */
  Map<String, Object> recipe(String machine) {
    Map<String, Object> recipe =
        new HashMap<>(
            Map.of(
                "machine",
                machine,
                "material",
                material,
                "process",
                "surface-engraving",
                "settings",
                Map.of("power", "60 %", "speed", speed, "lineSpacing", "0.1 mm")));
    return coated(recipe);
  }

  /** Four tests on a described laser. */
  Map<String, Object> grid() {
    Map<String, Object> grid = new HashMap<>();
    grid.putAll(
        Map.of(
            "laser",
            Map.of(
                "source",
                "diode",
                "wavelength",
                "455 nm",
                "ratedPower",
                "10 W",
                "motion",
                "gantry"),
            "material",
            material,
            "process",
            "surface-engraving",
            "settings",
            Map.of("lineSpacing", "0.1 mm"),
            "axes",
            Map.of(
                "across", Map.of("setting", "power", "values", List.of("40 %", "60 %")),
                "down", Map.of("setting", "speed", "values", List.of(speed, "500 mm/s")))));
    return coated(grid);
  }

  Map<String, Object> reported() {
    Map<String, Object> report =
        new HashMap<>(
            Map.of(
                "laser",
                laser(),
                "material",
                material,
                "process",
                "surface-engraving",
                "settings",
                Map.of("power", "60 %", "speed", speed, "lineSpacing", "0.1 mm"),
                "effect",
                "right",
                "notes",
                "Words of " + UUID.randomUUID()));
    return coated(report);
  }

  Map<String, Object> text() {
    Map<String, Object> text = new HashMap<>(words());
    text.put("title", "How is " + material + " engraved?");
    if (this != PLAIN) {
      text.put("text", "I use 60 % and " + speed + " there.");
      Map<String, Object> ties = new HashMap<>(Map.of("material", material));
      text.put("ties", coated(ties));
    }
    return text;
  }

  static Map<String, Object> words() {
    return Map.of("text", "Words of " + UUID.randomUUID());
  }

  static Map<String, Object> laser() {
    return Map.of(
        "source", "co2", "wavelength", "10.6 um", "ratedPower", "40 W", "motion", "gantry");
  }

  static Map<String, Object> machine() {
    Map<String, Object> machine = new HashMap<>(laser());
    machine.put("name", "Shed tube");
    machine.put("regime", "cw");
    return machine;
  }

  private Map<String, Object> coated(Map<String, Object> work) {
    if (coating != null) {
      work.put("coating", coating);
    }
    return work;
  }
}
