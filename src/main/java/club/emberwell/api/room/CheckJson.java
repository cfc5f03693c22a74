package club.emberwell.api.room;

import club.emberwell.room.CheckState;
import club.emberwell.room.RoomCheck;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;

/**
 * A check of a room.
 *
 * @param everyDays left out where it follows every job
 * @param lastOn left out where it was never done
 * @param dueOn left out where it has no day, or is due at once
 * @param due today or before
 * @param how one does it
 * @param source who says how often
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record CheckJson(
    RoomCheck check,
    String label,
    @Nullable Integer everyDays,
    @Nullable String lastOn,
    @Nullable String dueOn,
    boolean due,
    String how,
    String source) {
  static CheckJson of(CheckState state) {
    return new CheckJson(
        state.check(),
        state.check().label(),
        state.everyDays(),
        text(state.lastOn()),
        text(state.dueOn()),
        state.isDue(LocalDate.now(ZoneOffset.UTC)),
        state.check().how(),
        state.check().source());
  }

  private static String text(LocalDate day) {
    return day == null ? null : day.toString();
  }
}
