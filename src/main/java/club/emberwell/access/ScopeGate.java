package club.emberwell.access;

import club.emberwell.access.problem.Problem;
import club.emberwell.access.problem.Problems;
import club.emberwell.member.Scope;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ResourceInfo;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/**
 * Holds every request to the scopes of its token: GET needs read, everything else needs write. So a
 * route that is added later needs no scope of its own to be named.
 */
@ApplicationScoped
class ScopeGate {
  private final CurrentActor actor;

  ScopeGate(CurrentActor actor) {
    this.actor = actor;
  }

  /** Why a role did not reach: perhaps the token has less of one than its owner. */
  Problem forbidden() {
    return actor.lessened()
        ? Problems.scopeMissing(Scope.MODERATE, actor.scopes())
        : Problems.forbidden();
  }

  @ServerRequestFilter
  void check(ContainerRequestContext request, ResourceInfo route) {
    Scope needed = Writes.does(request, route.getResourceMethod()) ? Scope.WRITE : Scope.READ;
    Set<Scope> granted = actor.scopes();
    if (!granted.contains(needed)) {
      throw Problems.scopeMissing(needed, granted).exception();
    }
  }
}
