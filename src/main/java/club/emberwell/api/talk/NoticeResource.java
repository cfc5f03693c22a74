package club.emberwell.api.talk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.talk.TalkRequests.Wanted;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Notices: what members should know, e.g. that a controller's new version behaves otherwise. */
@Path("/api/v1/notices")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
@Tag(name = "Talk")
public class NoticeResource {
  private final TalkRequests requests;

  NoticeResource(TalkRequests requests) {
    this.requests = requests;
  }

  @GET
  @RolesAllowed(Role.READ)
  @Operation(
      operationId = "listNotices",
      summary = "Notices, newest first, or those that hold every word",
      description = TalkRequests.SORTS)
  public ListJson<TalkJson> list(
      @QueryParam("q") String text, @QueryParam("sort") String sort, @BeanParam ListQuery list) {
    return requests.list(EntryKind.NOTICE, new Wanted(text, sort, false), list);
  }

  @Keyed
  @WithEtag
  @POST
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "postNotice",
      summary = "Post a notice",
      description = "Needs an Idempotency-Key.")
  @APIResponseSchema(value = TalkJson.class, responseCode = "201")
  public Response post(TalkRequest sent) {
    return requests.post(EntryKind.NOTICE, sent);
  }

  @WithEtag
  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "getNotice", summary = "Read a notice")
  @APIResponseSchema(TalkJson.class)
  public Response get(@PathParam("id") UUID id) {
    return requests.get(EntryKind.NOTICE, id);
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "reviseNotice",
      summary = "Write a notice anew",
      description = "Its author may, and moderators. Needs If-Match.")
  @APIResponseSchema(TalkJson.class)
  public Response revise(@PathParam("id") UUID id, TalkRequest sent) {
    return requests.revise(EntryKind.NOTICE, id, sent);
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "withdrawNotice",
      summary = "Withdraw a notice",
      description = "Its author may. It stays in the history.")
  public void withdraw(@PathParam("id") UUID id) {
    requests.withdraw(EntryKind.NOTICE, id);
  }

  @GET
  @Path("{id}/history")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "listNoticeVersions", summary = "Every version of a notice")
  public ListJson<TalkRevisionJson> history(@PathParam("id") UUID id) {
    return requests.history(EntryKind.NOTICE, id);
  }
}
