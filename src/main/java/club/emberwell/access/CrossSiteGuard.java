package club.emberwell.access;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.MediaType;
import java.util.Set;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.WithFormRead;
import org.jboss.resteasy.reactive.server.core.ResteasyReactiveRequestContext;
import org.jboss.resteasy.reactive.server.spi.ResteasyReactiveContainerRequestContext;

/**
 * Lets a page change something only when one of our own forms asks. The API needs none of this: it
 * takes no cookies.
 */
class CrossSiteGuard {
  private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");
  private static final String SAME_ORIGIN = "same-origin";

  private final RoutingContext routing;
  private final PublicUrl url;
  private final FormToken token;

  CrossSiteGuard(RoutingContext routing, PublicUrl url, FormToken token) {
    this.routing = routing;
    this.url = url;
    this.token = token;
  }

  @ServerRequestFilter
  @WithFormRead
  void check(ResteasyReactiveContainerRequestContext context, ResourceInfo route) {
    if (SAFE.contains(context.getMethod())
        || ApiPaths.isApi(routing)
        || route.getResourceMethod().isAnnotationPresent(FromOutside.class)) {
      return;
    }
    if (foreign(routing.request())) {
      throw Problems.of(ProblemKind.FOREIGN_FORM, "This was sent from another website.")
          .exception();
    }
    if (!token.fits(sent(context))) {
      throw Problems.of(
              ProblemKind.FOREIGN_FORM,
              "We could not check the form: it is from another browser, or your cookies were"
                  + " cleared. Load the page again and send it once more.")
          .exception();
    }
  }

  /** Browsers say where a request comes from; what says nothing still needs the token. */
  private boolean foreign(HttpServerRequest request) {
    String site = request.getHeader("Sec-Fetch-Site");
    if (site != null && !site.equals(SAME_ORIGIN)) {
      return true;
    }
    String origin = request.getHeader("Origin");
    return origin != null && !url.isOwnOrigin(origin, request);
  }

  /** Only what a form or our own script sends can carry a token. */
  private String sent(ResteasyReactiveContainerRequestContext context) {
    String header = context.getHeaderString(FormToken.HEADER);
    if (header != null) {
      return header;
    }
    MediaType type = context.getMediaType();
    boolean form =
        MediaType.APPLICATION_FORM_URLENCODED_TYPE.isCompatible(type)
            || MediaType.MULTIPART_FORM_DATA_TYPE.isCompatible(type);
    if (type == null || !form) {
      return null;
    }
    ResteasyReactiveRequestContext request =
        (ResteasyReactiveRequestContext) context.getServerRequestContext();
    return (String) request.getFormParameter(FormToken.FIELD, true, false);
  }
}
