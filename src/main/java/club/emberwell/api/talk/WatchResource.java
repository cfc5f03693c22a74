package club.emberwell.api.talk;

import club.emberwell.access.PublicUrl;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.talk.watch.Watch;
import club.emberwell.talk.watch.Watches;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
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
  private final PublicUrl url;
  private final ApiRequest request;

  WatchResource(Watches watches, PublicUrl url, ApiRequest request) {
    this.watches = watches;
    this.url = url;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listWatches", summary = "My watches, in the order they were made")
  public ListJson<WatchJson> list() {
    return ListJson.of(watches.of(request.actor()).stream().map(this::json).toList());
  }

  @Keyed
  @WithEtag
  @POST
  @Operation(
      operationId = "addWatch",
      summary = "Keep a search",
      description = "The same search twice is one watch. Needs an Idempotency-Key.")
  @APIResponseSchema(value = WatchJson.class, responseCode = "201")
  public Response add(WatchRequest sent) {
    return request.once(
        sent,
        () -> {
          Watch watch = watches.add(request.actor(), sent.query(), sent.label(), sent.wantsMail());
          return answer(Response.created(URI.create(PATH + "/" + watch.id())), watch);
        });
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(operationId = "getWatch", summary = "One of my watches")
  @APIResponseSchema(WatchJson.class)
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), watches.get(request.actor(), id));
  }

  /** What of a watch can be changed; its search cannot. */
  @Schema(name = "WatchChange")
  record Change(String label, Boolean mail) {}

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "changeWatch",
      summary = "Rename a watch, or have its finds mailed",
      description = "Needs If-Match.")
  @APIResponseSchema(WatchJson.class)
  public Response change(@PathParam("id") UUID id, Change sent) {
    int version = request.version();
    boolean mail = sent.mail() != null && sent.mail();
    return answer(Response.ok(), watches.change(request.actor(), id, version, sent.label(), mail));
  }

  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "removeWatch",
      summary = "End a watch with everything it found and its feed")
  public void remove(@PathParam("id") UUID id) {
    watches.remove(request.actor(), id);
  }

  @WithEtag
  @PUT
  @Path("{id}/feed")
  @Operation(
      operationId = "renewWatchFeed",
      summary = "Give a watch a feed",
      description = "Where it had one, the old address is dead from now on. Takes no body.")
  @APIResponseSchema(WatchJson.class)
  public Response feed(@PathParam("id") UUID id) {
    return answer(Response.ok(), watches.renewFeed(request.actor(), id));
  }

  @WithEtag
  @DELETE
  @Path("{id}/feed")
  @Operation(operationId = "stopWatchFeed", summary = "Stop the feed of a watch")
  @APIResponseSchema(WatchJson.class)
  public Response stopFeed(@PathParam("id") UUID id) {
    return answer(Response.ok(), watches.stopFeed(request.actor(), id));
  }

  private Response answer(Response.ResponseBuilder response, Watch watch) {
    return ApiRequest.answer(response, watch.version(), json(watch));
  }

  private WatchJson json(Watch watch) {
    return WatchJson.of(watch, watch.feedPath() == null ? null : url.of(watch.feedPath()));
  }
}
