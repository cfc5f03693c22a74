package club.emberwell.api.search;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.Etags;
import club.emberwell.bench.Machine;
import club.emberwell.bench.Machines;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Actor;
import club.emberwell.search.SearchService;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;

/**
 * Spares the search whose answer the client holds. The tag names all the answer follows from: the
 * state of the index, the words and comments, the catalog with its cautions, the address, and who
 * asks with which machines. It is weak, since reports are shown as they are in the database, which
 * the index reaches a moment later; and another one on every node.
 */
class IndexAnswers {
  private static final String TAG = "index-tag";

  /** The last before the search, the first after it: answers are looked at by others then. */
  private static final int LAST = Priorities.USER + 2000;

  private final SearchService search;
  private final CatalogService catalog;
  private final Machines machines;
  private final CurrentActor current;
  private final RoutingContext routing;

  IndexAnswers(
      SearchService search,
      CatalogService catalog,
      Machines machines,
      CurrentActor current,
      RoutingContext routing) {
    this.search = search;
    this.catalog = catalog;
    this.machines = machines;
    this.current = current;
    this.routing = routing;
  }

  @FromIndex
  @ServerRequestFilter(priority = LAST)
  Response spare(ContainerRequestContext request) {
    String tag = Etags.weak(of(request.getUriInfo().getRequestUri()));
    request.setProperty(TAG, tag);
    return Etags.held(routing, tag)
        ? Response.notModified().header(HttpHeaders.ETAG, tag).build()
        : null;
  }

  @FromIndex
  @ServerResponseFilter(priority = LAST)
  void mark(ContainerRequestContext request, ContainerResponseContext response) {
    if (response.getStatus() == Response.Status.OK.getStatusCode()) {
      response.getHeaders().putSingle(HttpHeaders.ETAG, request.getProperty(TAG));
    }
  }

  private String of(URI address) {
    Actor actor = current.get();
    String asked = address.getRawPath() + "?" + address.getRawQuery();
    List<String> own =
        actor.signedIn()
            ? machines.of(actor).stream().map(IndexAnswers::version).sorted().toList()
            : List.of();
    List<Object> all =
        List.of(
            search.generation(),
            catalog.snapshot().version(),
            asked,
            actor.signedIn() ? actor.memberId() : "",
            actor.role(),
            own);
    return UUID.nameUUIDFromBytes(all.toString().getBytes(StandardCharsets.UTF_8)).toString();
  }

  private static String version(Machine machine) {
    return machine.id() + " " + machine.version();
  }
}
