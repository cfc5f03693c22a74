package club.emberwell.api.hook;

import club.emberwell.api.view.MemberJson;
import club.emberwell.hook.HookEvent;
import club.emberwell.hook.HookState;
import club.emberwell.hook.Webhook;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A webhook as answered.
 *
 * @param member who added it
 * @param secret what deliveries are signed with; only in the answer that made it
 */
@Schema(name = "Webhook")
@JsonInclude(JsonInclude.Include.NON_NULL)
record WebhookJson(
    UUID id,
    int version,
    String label,
    String url,
    List<HookEvent> events,
    MemberJson member,
    @JsonUnwrapped Course course,
    @Nullable String secret) {

  /**
   * How it goes.
   *
   * @param failingSince left out where the last delivery arrived, or there was none
   * @param arrivedAt when one arrived last; left out where none did
   * @param leftOut events that were not told because too many waited
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Course(
      HookState state,
      @Nullable Instant failingSince,
      @Nullable Instant arrivedAt,
      long leftOut,
      Instant createdAt,
      Instant updatedAt) {}

  static WebhookJson of(Webhook hook) {
    return of(hook, null);
  }

  static WebhookJson of(Webhook hook, String secret) {
    Webhook.Standing standing = hook.standing();
    Webhook.Made made = hook.made();
    return new WebhookJson(
        hook.id(),
        hook.version(),
        hook.label(),
        hook.url(),
        hook.events(),
        MemberJson.of(made.memberId(), made.handle()),
        new Course(
            standing.state(),
            standing.failingSince(),
            standing.arrivedAt(),
            standing.leftOut(),
            made.at(),
            made.updated()),
        secret);
  }
}
