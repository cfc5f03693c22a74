package club.emberwell.api.talk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Comments, one at a time; they are posted under their report. */
@Path("/api/v1/comments/{id}")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
@Tag(name = "Talk")
public class CommentResource {
  private final TalkRequests requests;

  CommentResource(TalkRequests requests) {
    this.requests = requests;
  }

  @WithEtag
  @GET
  @RolesAllowed(Role.READ)
  @Operation(operationId = "getComment", summary = "Read a comment")
  @APIResponseSchema(TalkJson.class)
  public Response get(@PathParam("id") UUID id) {
    return requests.get(EntryKind.COMMENT, id);
  }

  @IfMatch
  @WithEtag
  @PUT
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "reviseComment",
      summary = "Write a comment anew",
      description = "Its author may, and moderators. Needs If-Match.")
  @APIResponseSchema(TalkJson.class)
  public Response revise(@PathParam("id") UUID id, CommentRequest sent) {
    return requests.revise(EntryKind.COMMENT, id, sent.talk());
  }

  @IfMatch(required = false)
  @DELETE
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "withdrawComment",
      summary = "Withdraw a comment",
      description = "Its author may. It stays in the history.")
  public void withdraw(@PathParam("id") UUID id) {
    requests.withdraw(EntryKind.COMMENT, id);
  }

  @GET
  @Path("history")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "listCommentVersions", summary = "Every version of a comment")
  public ListJson<TalkRevisionJson> history(@PathParam("id") UUID id) {
    return requests.history(EntryKind.COMMENT, id);
  }
}
