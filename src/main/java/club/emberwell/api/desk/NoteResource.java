package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskJson.NoteView;
import club.emberwell.api.desk.DeskRequests.Nothing;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.rule.Rules;
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
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** What rules noticed and nobody has looked at yet. */
@Path("/api/v1/desk/notes")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class NoteResource {
  private final Rules rules;
  private final ApiRequest request;

  NoteResource(Rules rules, ApiRequest request) {
    this.rules = rules;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listRuleNotes", summary = "Open notes, newest first")
  public ListJson<NoteView> open(@BeanParam ListQuery list) {
    return ListJson.of(rules.open(request.actor(), list.part()), NoteView::of);
  }

  @Keyed
  @POST
  @Path("{id}/seen")
  @Operation(operationId = "markRuleNoteSeen", summary = "Lay a note aside")
  @APIResponse(responseCode = "204")
  public Response seen(@RestPath long id, Nothing sent) {
    return request.done(sent, actor -> rules.seen(actor, id));
  }
}
