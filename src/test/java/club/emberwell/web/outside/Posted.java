package club.emberwell.web.outside;

import club.emberwell.access.People.Person;
import java.util.HashMap;
import java.util.Map;

/** What members post that others find from outside. */
final class Posted {
  private Posted() {}

  static String word() {
    return "w" + Long.toString(System.nanoTime(), 36);
  }

  static String report(Person by, String word) {
    Map<String, Object> report = new HashMap<>();
    report.put(
        "laser",
        Map.of(
            "source",
            "fibre",
            "wavelength",
            "1064 nm",
            "ratedPower",
            "30 W",
            "motion",
            "galvo",
            "regime",
            "ns"));
    report.put("material", "stainless steel");
    report.put("coating", "powder coat");
    report.put("process", "coating-removal");
    report.put(
        "settings",
        Map.of("power", "40 %", "speed", "800 mm/s", "lineSpacing", "0.05 mm", "passes", 2));
    report.put("effect", "right");
    report.put("quality", 4);
    report.put("notes", "Words of " + word);
    return by.makes("reports", report);
  }
}
