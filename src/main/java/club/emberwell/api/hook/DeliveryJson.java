package club.emberwell.api.hook;

import club.emberwell.hook.Delivery;
import club.emberwell.hook.HookEvent;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * A delivery as answered.
 *
 * @param id the header {@code webhook-id}, the same at every try
 */
@Schema(name = "WebhookDelivery")
@JsonInclude(JsonInclude.Include.NON_NULL)
record DeliveryJson(UUID id, HookEvent event, Instant createdAt, @JsonUnwrapped Progress progress) {

  /**
   * How far it came.
   *
   * @param dueAt when the next try is due; left out once it is over
   * @param endedAt left out while it waits
   * @param status of the last answer; left out where none came
   * @param error what went wrong at the last try
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Progress(
      Delivery.State state,
      int tries,
      @Nullable Instant dueAt,
      @Nullable Instant endedAt,
      @Nullable Integer status,
      @Nullable String error) {}

  static DeliveryJson of(Delivery delivery) {
    Delivery.Progress now = delivery.progress();
    return new DeliveryJson(
        delivery.id(),
        delivery.event(),
        delivery.createdAt(),
        new Progress(
            now.state(), now.tries(), now.dueAt(), now.endedAt(), now.status(), now.error()));
  }
}
