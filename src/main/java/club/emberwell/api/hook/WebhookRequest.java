package club.emberwell.api.hook;

import club.emberwell.hook.HookEvent;
import club.emberwell.hook.Webhook;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A webhook as sent.
 *
 * @param label what to call it
 * @param url where to send; https, and http where the operator of the server allows that
 * @param events of what it is told; at least one
 * @param active false switches it off; left out = on
 */
record WebhookRequest(String label, String url, List<HookEvent> events, @Nullable Boolean active) {
  Webhook.Draft draft() {
    List<String> codes =
        events == null
            ? null
            : events.stream().filter(Objects::nonNull).map(HookEvent::code).toList();
    return new Webhook.Draft(label, url, codes, active);
  }
}
