package club.emberwell.api.search;

import club.emberwell.search.index.SearchIndex;
import io.quarkus.runtime.BlockingOperationControl;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response.Status.Family;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Lets the answer to a write wait until the report can be found, so that whoever posts a result
 * sees it counted in the next page they open. It stands here, after every transaction has ended,
 * and knows the report by the address the answer leads to or the request went to.
 */
class OwnReportAtOnce {
  private static final Set<String> READS = Set.of("GET", "HEAD", "OPTIONS");
  private static final Pattern REPORT =
      Pattern.compile("/reports/([0-9a-fA-F]{8}(?:-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12})(?:[/?#]|$)");

  private final SearchIndex index;

  OwnReportAtOnce(SearchIndex index) {
    this.index = index;
  }

  @ServerResponseFilter
  void await(ContainerRequestContext request, ContainerResponseContext response) {
    if (READS.contains(request.getMethod()) || !succeeded(response)) {
      return;
    }
    Optional<UUID> report =
        in(response.getHeaderString(HttpHeaders.LOCATION))
            .or(() -> in(request.getUriInfo().getRequestUri().getPath()));
    if (report.isPresent() && BlockingOperationControl.isBlockingAllowed()) {
      index.awaitSeen(report.get());
    }
  }

  private static boolean succeeded(ContainerResponseContext response) {
    Family family = response.getStatusInfo().getFamily();
    return family == Family.SUCCESSFUL || family == Family.REDIRECTION;
  }

  private static Optional<UUID> in(String address) {
    if (address == null) {
      return Optional.empty();
    }
    Matcher matcher = REPORT.matcher(address);
    return matcher.find() ? Optional.of(UUID.fromString(matcher.group(1))) : Optional.empty();
  }
}
