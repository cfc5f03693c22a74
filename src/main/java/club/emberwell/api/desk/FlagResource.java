package club.emberwell.api.desk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.desk.DeskJson.FlagView;
import club.emberwell.api.desk.DeskRequests.Raise;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.flag.Flags;
import club.emberwell.entry.EntryRef;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** A member's flags with what came of them. */
@Path("/api/v1/flags")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Flags")
public class FlagResource {
  private final Flags flags;
  private final ApiRequest request;

  FlagResource(Flags flags, ApiRequest request) {
    this.flags = flags;
    this.request = request;
  }

  @Keyed
  @POST
  @Operation(
      operationId = "raiseFlag",
      summary = "Flag a report, question, answer, notice or photo")
  @APIResponseSchema(FlagView.class)
  @Fails({ProblemKind.NOT_FOUND, ProblemKind.YOUR_OWN})
  public Response flag(Raise sent) {
    return request.did(
        sent,
        actor -> {
          UUID id = ApiRequest.needed("/id", sent.id());
          EntryRef ref = EntryRef.of(ApiRequest.needed("/kind", sent.kind()), id);
          return FlagView.of(flags.flag(actor, ref, sent.reason(), sent.note()));
        });
  }

  @GET
  @Operation(operationId = "listMyFlags", summary = "One's own flags, newest first")
  public ListJson<FlagView> mine(@BeanParam ListQuery list) {
    return ListJson.of(flags.mine(request.actor(), list.part()), FlagView::of);
  }

  @DELETE
  @Path("{id}")
  @Operation(operationId = "withdrawFlag", summary = "Take back one's own open flag")
  public void withdraw(@RestPath UUID id) {
    flags.withdraw(request.actor(), id);
  }
}
