package club.emberwell.api.desk;

import club.emberwell.access.ReadsOnly;
import club.emberwell.api.desk.DeskRequests.Nothing;
import club.emberwell.api.desk.DeskRequests.Undo;
import club.emberwell.api.desk.UndoJson.PlanView;
import club.emberwell.api.desk.UndoJson.RunView;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.view.MemberJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.undo.UndoPlan;
import club.emberwell.desk.undo.Undos;
import club.emberwell.member.Members;
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
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** Undoing what a member or a rule did since a time. */
@Path("/api/v1/desk/undos")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class UndoResource {
  private final Undos undos;
  private final Members members;
  private final ApiRequest request;

  UndoResource(Undos undos, Members members, ApiRequest request) {
    this.undos = undos;
    this.members = members;
    this.request = request;
  }

  @POST
  @Path("preview")
  @ReadsOnly
  @Operation(operationId = "previewUndo", summary = "What an undo would do; nothing is done")
  public PlanView preview(Undo sent) {
    UndoPlan plan = undos.preview(request.actor(), sent.wanted());
    UUID member = plan.member();
    return PlanView.of(
        plan,
        member == null ? null : MemberJson.of(member, members.labels(List.of(member)).get(member)));
  }

  @Keyed
  @POST
  @Operation(
      operationId = "startUndo",
      summary = "Undo; a good deal at once, the rest in the background")
  @APIResponseSchema(RunView.class)
  public Response start(Undo sent) {
    return request.did(
        sent, actor -> RunView.of(undos.start(actor, sent.id(), sent.wanted(), sent.reason())));
  }

  @GET
  @Operation(operationId = "listUndos", summary = "Undos, newest first")
  public ListJson<RunView> all(@BeanParam ListQuery list) {
    return ListJson.of(undos.all(request.actor(), list.part()), RunView::of);
  }

  @GET
  @Path("{id}")
  @Operation(operationId = "getUndo", summary = "How far an undo is")
  public RunView one(@RestPath UUID id) {
    return RunView.of(undos.one(request.actor(), id));
  }

  @Keyed
  @POST
  @Path("{id}/restore")
  @Operation(operationId = "restoreUndo", summary = "Take an undo back")
  @APIResponseSchema(RunView.class)
  public Response restore(@RestPath UUID id, Nothing sent) {
    return request.did(sent, actor -> RunView.of(undos.restore(actor, id)));
  }
}
