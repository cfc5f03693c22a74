package club.emberwell.api.talk;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.Etags;
import club.emberwell.access.PublicUrl;
import club.emberwell.api.writes.KeyedWrites;
import club.emberwell.member.Role;
import club.emberwell.talk.Watch;
import club.emberwell.talk.Watches;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** One's own kept searches; nobody else's can be seen. */
@Path(WatchResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Watches")
public class WatchResource {
  static final String PATH = "/api/v1/watches";

  private final Watches watches;
  private final CurrentActor actor;
  private final KeyedWrites writes;
  private final PublicUrl url;
  private final RoutingContext request;

  WatchResource(
      Watches watches,
      CurrentActor actor,
      KeyedWrites writes,
      PublicUrl url,
      RoutingContext request) {
    this.watches = watches;
    this.actor = actor;
    this.writes = writes;
    this.url = url;
    this.request = request;
  }

  /** In the order they were made. */
  record Listing(List<WatchJson> watches) {}

  @GET
  @Operation(summary = "Your watches")
  public Listing list() {
    return new Listing(watches.of(actor.get()).stream().map(this::json).toList());
  }

  @POST
  @Operation(
      summary = "Keep a search",
      description = "The same search twice is one watch. Needs an Idempotency-Key.")
  public Response add(WatchRequest sent) {
    return writes.once(
        sent,
        () -> {
          Watch watch = watches.add(actor.get(), sent.query(), sent.label(), sent.wantsMail());
          return answer(Response.created(URI.create(PATH + "/" + watch.id())), watch);
        });
  }

  @GET
  @Path("{id}")
  @Operation(summary = "One of your watches")
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), watches.get(actor.get(), id));
  }

  /** What of a watch can be changed; its search cannot. */
  record Change(String label, Boolean mail) {}

  @PUT
  @Path("{id}")
  @Operation(summary = "Rename a watch, or have its finds mailed", description = "Needs If-Match.")
  public Response change(@PathParam("id") UUID id, Change sent) {
    int version = Math.toIntExact(Math.min(Etags.required(request), Integer.MAX_VALUE));
    boolean mail = sent.mail() != null && sent.mail();
    return answer(Response.ok(), watches.change(actor.get(), id, version, sent.label(), mail));
  }

  @DELETE
  @Path("{id}")
  @Operation(summary = "End a watch with everything it found and its feed")
  public void remove(@PathParam("id") UUID id) {
    watches.remove(actor.get(), id);
  }

  @PUT
  @Path("{id}/feed")
  @Operation(
      summary = "Give a watch a feed",
      description = "Where it had one, the old address is dead from now on. Takes no body.")
  public Response feed(@PathParam("id") UUID id) {
    return answer(Response.ok(), watches.renewFeed(actor.get(), id));
  }

  @DELETE
  @Path("{id}/feed")
  @Operation(summary = "Stop the feed of a watch")
  public Response stopFeed(@PathParam("id") UUID id) {
    return answer(Response.ok(), watches.stopFeed(actor.get(), id));
  }

  private Response answer(Response.ResponseBuilder response, Watch watch) {
    return response.header(HttpHeaders.ETAG, Etags.of(watch.version())).entity(json(watch)).build();
  }

  private WatchJson json(Watch watch) {
    return WatchJson.of(watch, watch.feedPath() == null ? null : url.of(watch.feedPath()));
  }
}
