package club.emberwell.web.frame;

import club.emberwell.access.CurrentActor;
import club.emberwell.member.Actor;
import club.emberwell.talk.watch.Inbox;
import io.vertx.core.http.HttpMethod;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

/**
 * Whoever opens the page of an entry knows its news: what their watches found of it counts as read.
 *
 * <p>A GET may do that because it asks for nothing else: it touches the reader's own inbox alone,
 * twice is as once, and other sites cannot make it (the session goes along with navigation only).
 * What nobody looks at, a browser's prefetch or prerender or a HEAD, reads nothing.
 */
@RequestScoped
public class Opened {
  // The first is the Fetch standard's, the second what browsers sent before it.
  private static final List<String> PURPOSES = List.of("Sec-Purpose", "Purpose");

  private final Inbox inbox;
  private final CurrentActor current;
  private final RoutingContext request;

  Opened(Inbox inbox, CurrentActor current, RoutingContext request) {
    this.inbox = inbox;
    this.current = current;
    this.request = request;
  }

  /** One statement for a member, none for a stranger. */
  public void saw(Collection<UUID> entries) {
    Actor reader = current.get();
    if (reader.signedIn() && isLookedAt()) {
      inbox.markSeen(reader, entries);
    }
  }

  private boolean isLookedAt() {
    return HttpMethod.GET.equals(request.request().method())
        && PURPOSES.stream()
            .map(request.request()::getHeader)
            .noneMatch(purpose -> purpose != null && purpose.contains("prefetch"));
  }
}
