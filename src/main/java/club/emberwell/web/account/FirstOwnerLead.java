package club.emberwell.web.account;

import club.emberwell.member.door.NewClub;
import jakarta.ws.rs.HttpMethod;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;

/** Leads whoever opens a club that has nobody yet to where its first owner is made. */
class FirstOwnerLead {
  private static final Set<String> FRONT = Set.of("/", "/sign-in", "/sign-up");

  private final NewClub club;

  FirstOwnerLead(NewClub club) {
    this.club = club;
  }

  @ServerRequestFilter(preMatching = true)
  Response lead(ContainerRequestContext request) {
    boolean front =
        club.isEmpty()
            && request.getMethod().equals(HttpMethod.GET)
            && FRONT.contains(request.getUriInfo().getPath());
    return front ? Response.seeOther(URI.create(JoinPages.FIRST_OWNER)).build() : null;
  }
}
