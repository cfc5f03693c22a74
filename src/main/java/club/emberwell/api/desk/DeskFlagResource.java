package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskJson.FlagView;
import club.emberwell.api.desk.DeskJson.FlaggedView;
import club.emberwell.api.desk.DeskRequests.Settle;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.flag.Flags;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryRef;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** Flags to settle. */
@Path("/api/v1/desk/flags")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class DeskFlagResource {
  private final Flags flags;
  private final ApiRequest request;

  DeskFlagResource(Flags flags, ApiRequest request) {
    this.flags = flags;
    this.request = request;
  }

  /** How many flags were settled. */
  @Schema(name = "SettledFlags")
  record Settled(int settled) {}

  @GET
  @Operation(
      operationId = "listFlaggedItems",
      summary = "Items with open flags, the longest flagged first")
  public ListJson<FlaggedView> open(@BeanParam ListQuery list) {
    return ListJson.of(flags.open(request.actor(), list.part()), FlaggedView::of);
  }

  @GET
  @Path("{kind}/{id}")
  @Operation(operationId = "listFlagsOnItem", summary = "The open flags on an item")
  public ListJson<FlagView> on(@RestPath String kind, @RestPath UUID id) {
    return ListJson.of(
        flags.on(request.actor(), EntryRef.of(kind, id)).stream().map(FlagView::of).toList());
  }

  @Keyed
  @POST
  @Path("{kind}/{id}")
  @Operation(operationId = "settleFlags", summary = "Settle the open flags on an item")
  @APIResponseSchema(Settled.class)
  public Response settle(@RestPath String kind, @RestPath UUID id, Settle sent) {
    EntryRef ref = EntryRef.of(kind, id);
    return request.did(
        sent,
        actor -> {
          boolean upheld = ApiRequest.needed("/upheld", sent.upheld());
          Decision action = sent.action() == null ? null : Decision.read("/action", sent.action());
          return new Settled(flags.settle(actor, ref, upheld, action, sent.reason()));
        });
  }
}
