package club.emberwell.hook;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * An address that is told what happens here, as owners see it; without its secret.
 *
 * @param events in the order of {@link HookEvent}
 */
public record Webhook(
    UUID id,
    int version,
    String label,
    String url,
    List<HookEvent> events,
    Standing standing,
    Made made) {
  public Webhook {
    events = List.copyOf(events);
  }

  /**
   * How it goes.
   *
   * @param failingSince null where the last delivery arrived, or there was none
   * @param arrivedAt when one arrived last, or null
   * @param leftOut events that were not told because too many waited
   */
  public record Standing(HookState state, Instant failingSince, Instant arrivedAt, long leftOut) {}

  /**
   * Who added it, and when it was added and last changed.
   *
   * @param handle {@code former member} where that member was erased
   */
  public record Made(UUID memberId, String handle, Instant at, Instant updated) {}

  /**
   * As an owner writes it.
   *
   * @param label what to call it
   * @param events codes of {@link HookEvent}
   * @param active whether it is on; null = on
   */
  public record Draft(String label, String url, List<String> events, Boolean active) {}

  /**
   * One with its secret, the only time that is seen.
   *
   * @param secret {@code whsec_} and base64
   */
  public record Fresh(Webhook webhook, String secret) {}

  public boolean on() {
    return standing.state() == HookState.ON;
  }

  /** Where owners find it: a path of this server. */
  public String path() {
    return "/desk/club/webhooks/" + id;
  }
}
