package club.emberwell.api.talk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.talk.TalkService;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Comments: short words under a report. */
@Path("/api/v1/reports/{id}/comments")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
@Tag(name = "Talk")
public class ReportCommentResource {
  private final TalkRequests requests;
  private final TalkService talk;
  private final ApiRequest request;

  ReportCommentResource(TalkRequests requests, TalkService talk, ApiRequest request) {
    this.requests = requests;
    this.talk = talk;
    this.request = request;
  }

  @GET
  @RolesAllowed(Role.READ)
  @Operation(
      operationId = "listComments",
      summary = "The comments under a report, the oldest first")
  public ListJson<TalkJson> list(@PathParam("id") UUID id, @BeanParam ListQuery list) {
    return ListJson.of(talk.comments(request.actor(), id, list.part()), TalkJson::of);
  }

  @Keyed
  @WithEtag
  @POST
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "postComment",
      summary = "Comment on a report",
      description = "Its author is told, and whoever commented before. Needs an Idempotency-Key.")
  @APIResponseSchema(value = TalkJson.class, responseCode = "201")
  public Response post(@PathParam("id") UUID id, CommentRequest sent) {
    return requests.comment(id, sent.talk());
  }
}
