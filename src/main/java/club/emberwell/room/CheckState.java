package club.emberwell.room;

import java.time.LocalDate;

/**
 * How a check stands.
 *
 * @param everyDays null where it has no days
 * @param lastOn null where it was never done
 */
public record CheckState(RoomCheck check, Integer everyDays, LocalDate lastOn) {
  /** When it is to be done next; null where it has no days or was never done. */
  public LocalDate dueOn() {
    return everyDays == null || lastOn == null ? null : lastOn.plusDays(everyDays);
  }

  /** What was never done is due at once. */
  public boolean isDue(LocalDate today) {
    return everyDays != null && (lastOn == null || !dueOn().isAfter(today));
  }
}
