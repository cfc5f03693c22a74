package club.emberwell.web.room;

import club.emberwell.room.CheckState;
import club.emberwell.room.RoomCheck;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;

/**
 * A check as a line.
 *
 * @param every how often, in words
 * @param last when it was last done, null where never
 * @param next when it is due, null where it has no day
 * @param due whether that is today or before
 */
public record CheckLine(
    String code,
    String label,
    String every,
    Instant last,
    Instant next,
    boolean due,
    String how,
    String source) {
  static CheckLine of(CheckState state) {
    RoomCheck check = state.check();
    return new CheckLine(
        check.code(),
        check.label(),
        state.everyDays() == null
            ? "after every job"
            : "every %d days".formatted(state.everyDays()),
        start(state.lastOn()),
        start(state.dueOn()),
        state.isDue(LocalDate.now(ZoneOffset.UTC)),
        check.how(),
        check.source());
  }

  private static Instant start(LocalDate day) {
    return day == null ? null : day.atStartOfDay(ZoneOffset.UTC).toInstant();
  }
}
