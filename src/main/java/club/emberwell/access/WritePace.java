package club.emberwell.access;

import club.emberwell.access.problem.Problems;
import club.emberwell.member.pace.Throttle;
import io.quarkus.runtime.BlockingOperationControl;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
import java.lang.reflect.Method;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Holds every write of a member to a pace, per account and per address. So a route that is added
 * later cannot be flooded either. Strangers' writes (joining, signing in) have limits of their own.
 */
@ApplicationScoped
class WritePace {
  private final CurrentActor actor;
  private final ClientAddress address;
  private final Throttle throttle;

  WritePace(CurrentActor actor, ClientAddress address, Throttle throttle) {
    this.actor = actor;
    this.address = address;
    this.throttle = throttle;
  }

  @ServerRequestFilter
  void check(ContainerRequestContext request, ResourceInfo route) {
    Method method = route.getResourceMethod();
    boolean counts = Writes.does(request, method) && !method.isAnnotationPresent(AtAnyPace.class);
    if (!counts || !actor.get().signedIn()) {
      return;
    }
    if (!BlockingOperationControl.isBlockingAllowed()) {
      throw new IllegalStateException(method + " writes and must be blocking");
    }
    throttle
        .write(actor.get().memberId(), address.prefix())
        .ifPresent(
            wait -> {
              throw Problems.slower(wait).exception();
            });
  }
}
