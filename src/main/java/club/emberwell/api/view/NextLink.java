package club.emberwell.api.view;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.UriBuilder;
import java.net.URI;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/** Says in a header, too, where a list goes on (RFC 8288). */
class NextLink {
  @ServerResponseFilter
  void link(ContainerRequestContext request, ContainerResponseContext response) {
    if (response.getEntity() instanceof ListJson<?> list && list.next() != null) {
      URI asked = request.getUriInfo().getRequestUri();
      URI next =
          UriBuilder.fromUri(asked.getRawPath())
              .replaceQuery(asked.getRawQuery())
              .replaceQueryParam("cursor", list.next())
              .build();
      response.getHeaders().putSingle(HttpHeaders.LINK, "<" + next + ">; rel=\"next\"");
    }
  }
}
