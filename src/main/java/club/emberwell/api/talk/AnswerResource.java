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

/** Answers, one at a time; they are posted at their question. */
@Path("/api/v1/answers/{id}")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
@Tag(name = "Talk")
public class AnswerResource {
  private final TalkRequests requests;

  AnswerResource(TalkRequests requests) {
    this.requests = requests;
  }

  @WithEtag
  @GET
  @RolesAllowed(Role.READ)
  @Operation(operationId = "getAnswer", summary = "Read an answer")
  @APIResponseSchema(TalkJson.class)
  public Response get(@PathParam("id") UUID id) {
    return requests.get(EntryKind.ANSWER, id);
  }

  @IfMatch
  @WithEtag
  @PUT
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "reviseAnswer",
      summary = "Write an answer anew",
      description = "Its author may, and moderators. Needs If-Match.")
  @APIResponseSchema(TalkJson.class)
  public Response revise(@PathParam("id") UUID id, TalkRequest sent) {
    return requests.revise(EntryKind.ANSWER, id, sent);
  }

  @IfMatch(required = false)
  @DELETE
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "withdrawAnswer",
      summary = "Withdraw an answer",
      description = "Its author may. It stays in the history.")
  public void withdraw(@PathParam("id") UUID id) {
    requests.withdraw(EntryKind.ANSWER, id);
  }

  @GET
  @Path("history")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "listAnswerVersions", summary = "Every version of an answer")
  public ListJson<TalkRevisionJson> history(@PathParam("id") UUID id) {
    return requests.history(EntryKind.ANSWER, id);
  }
}
