package club.emberwell.api.talk;

import club.emberwell.talk.watch.Watch;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A kept search as answered.
 *
 * @param query canonical, for the same parameters of {@code /api/v1/reports}
 * @param feed absolute address of its feed, left out where it has none; whoever knows it can read
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record WatchJson(
    UUID id,
    int version,
    String label,
    String query,
    boolean mail,
    @Nullable String feed,
    Instant createdAt) {

  static WatchJson of(Watch watch, String feed) {
    return new WatchJson(
        watch.id(),
        watch.version(),
        watch.label(),
        watch.query(),
        watch.mail(),
        feed,
        watch.createdAt());
  }
}
