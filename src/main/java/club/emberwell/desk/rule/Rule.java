package club.emberwell.desk.rule;

import java.time.Instant;

/**
 * A rule as it is set.
 *
 * @param mode off, note or hold
 * @param minutes the time it looks back, 0 where it does not
 * @param notes how many it made so far, counted to {@link DeskLimits#COUNT} + 1
 */
public record Rule(
    RuleCode code,
    String mode,
    double threshold,
    int minutes,
    int version,
    Instant changedAt,
    int notes) {
  public static final String OFF = "off";
  public static final String NOTE = "note";
  public static final String HOLD = "hold";

  public boolean on() {
    return !mode.equals(OFF);
  }

  public boolean holds() {
    return mode.equals(HOLD);
  }
}
