package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskRequests.FileWord;
import club.emberwell.api.desk.DeskRequests.Why;
import club.emberwell.api.desk.WordsJson.ChangeView;
import club.emberwell.api.desk.WordsJson.UnfiledView;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.word.VocabularyCare;
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
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** Words that matched no term. */
@Path("/api/v1/desk/words")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class WordResource {
  private final VocabularyCare care;
  private final ApiRequest request;

  WordResource(VocabularyCare care, ApiRequest request) {
    this.care = care;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listWaitingWords", summary = "Words that wait, the most written first")
  public ListJson<UnfiledView> waiting(@BeanParam ListQuery list) {
    return ListJson.of(care.waiting(request.actor(), list.part()), UnfiledView::of);
  }

  @Keyed
  @POST
  @Path("{id}/file")
  @Operation(
      operationId = "fileWord",
      summary = "File a word to a term, of which it becomes a spelling")
  @APIResponseSchema(ChangeView.class)
  public Response file(@RestPath UUID id, FileWord sent) {
    return request.did(
        sent,
        actor ->
            ChangeView.of(
                care.file(actor, id, ApiRequest.needed("/term", sent.term()), sent.reason())));
  }

  @Keyed
  @POST
  @Path("{id}/dismiss")
  @Operation(operationId = "dismissWord", summary = "Lay a word aside")
  @APIResponse(responseCode = "204")
  public Response dismiss(@RestPath UUID id, Why sent) {
    return request.done(sent, actor -> care.dismiss(actor, id, sent.reason()));
  }
}
