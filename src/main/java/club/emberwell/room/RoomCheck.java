package club.emberwell.room;

import club.emberwell.remark.Coded;

/** What is checked where people work with a laser, each with how often and who says so. */
public enum RoomCheck implements Coded {
  FIRE_WATCH(
      "fire-watch",
      "Fire watch",
      null,
      "Stay and watch for at least 30 minutes after every job.",
      "29 CFR 1910.252(a)(2)(iii)(B), written for welding and cutting"),
  EXTINGUISHER(
      "extinguisher",
      "Fire extinguisher",
      30,
      "In its place, within reach, seal whole, pressure in the green.",
      "29 CFR 1910.157(e)(2): looked at monthly; serviced yearly by (e)(3)"),
  SMOKE_DETECTOR(
      "smoke-detector",
      "Smoke detector",
      30,
      "Press its test button until it sounds.",
      "Advice of fire departments: monthly"),
  CO_DETECTOR(
      "co-detector",
      "Carbon monoxide detector",
      30,
      "Press its test button; replace it by the date on it.",
      "Advice of fire departments: monthly"),
  EXTRACTION(
      "extraction",
      "Extraction and filter",
      30,
      "Measure the flow, look for leaks and for dust in the duct, change the filter by its maker's"
          + " rule.",
      "Common practice, no source");

  private final String code;
  private final String label;
  private final Integer usualDays;
  private final String how;
  private final String source;

  RoomCheck(String code, String label, Integer usualDays, String how, String source) {
    this.code = code;
    this.label = label;
    this.usualDays = usualDays;
    this.how = how;
    this.source = source;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** Days between two checks where the member said no other; null = after every job. */
  public Integer usualDays() {
    return usualDays;
  }

  /** What one does. */
  public String how() {
    return how;
  }

  /** Who says how often. */
  public String source() {
    return source;
  }

  /** Whether it has days on which it is due. */
  public boolean recurs() {
    return usualDays != null;
  }
}
