package club.emberwell.api.talk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.talk.TalkRequests.Wanted;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.entry.EntryKind;
import club.emberwell.member.Role;
import club.emberwell.talk.AcceptedAnswers;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkService;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.DefaultValue;
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
import java.util.function.Function;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Questions and their answers. */
@Path("/api/v1/questions")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Fails({ProblemKind.WITHDRAWN, ProblemKind.REMOVED})
@Tag(name = "Talk")
public class QuestionResource {
  private final TalkRequests requests;
  private final TalkService talk;
  private final AcceptedAnswers accepted;
  private final ApiRequest request;

  QuestionResource(
      TalkRequests requests, TalkService talk, AcceptedAnswers accepted, ApiRequest request) {
    this.requests = requests;
    this.talk = talk;
    this.accepted = accepted;
    this.request = request;
  }

  /** A question with one page of its answers, the accepted one first. */
  @Schema(name = "QuestionWithAnswers")
  record Asked(@JsonUnwrapped TalkJson asked, ListJson<TalkJson> answers) {}

  /**
   * The answer that helped.
   *
   * @param answer null = none did
   */
  @Schema(name = "AcceptedAnswer")
  record Accepted(@Schema(nullable = true) UUID answer) {}

  @GET
  @RolesAllowed(Role.READ)
  @Operation(
      operationId = "listQuestions",
      summary = "Questions, newest first, or those that hold every word",
      description = TalkRequests.SORTS)
  public ListJson<TalkJson> list(
      @QueryParam("q") String text,
      @QueryParam("sort") String sort,
      @QueryParam("unanswered") @DefaultValue("false") boolean unanswered,
      @BeanParam ListQuery list) {
    return requests.list(EntryKind.QUESTION, new Wanted(text, sort, unanswered), list);
  }

  @Keyed
  @WithEtag
  @POST
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "askQuestion",
      summary = "Ask a question",
      description = "Needs an Idempotency-Key.")
  @APIResponseSchema(value = TalkJson.class, responseCode = "201")
  public Response post(TalkRequest sent) {
    return requests.post(EntryKind.QUESTION, sent);
  }

  @WithEtag
  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  @Operation(
      operationId = "getQuestion",
      summary = "Read a question with its answers",
      description = "A page of them, or the page on which one answer stands.")
  @APIResponseSchema(Asked.class)
  public Response get(
      @PathParam("id") UUID id, @QueryParam("answer") UUID answer, @BeanParam ListQuery list) {
    TalkService.Thread thread =
        answer == null
            ? talk.thread(request.actor(), id, list.part())
            : talk.threadAt(request.actor(), id, answer);
    Function<TalkEntry, TalkJson> json =
        requests.shown(
            Stream.concat(Stream.of(thread.question()), thread.answers().rows().stream()).toList());
    Asked asked = new Asked(json.apply(thread.question()), ListJson.of(thread.answers(), json));
    return ApiRequest.answer(Response.ok(), thread.question().version(), asked);
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "reviseQuestion",
      summary = "Write a question anew",
      description = "Who asked may, and moderators. Needs If-Match.")
  @APIResponseSchema(TalkJson.class)
  public Response revise(@PathParam("id") UUID id, TalkRequest sent) {
    return requests.revise(EntryKind.QUESTION, id, sent);
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "withdrawQuestion",
      summary = "Withdraw a question",
      description = "Who asked may. It stays in the history.")
  public void withdraw(@PathParam("id") UUID id) {
    requests.withdraw(EntryKind.QUESTION, id);
  }

  @GET
  @Path("{id}/history")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "listQuestionVersions", summary = "Every version of a question")
  public ListJson<TalkRevisionJson> history(@PathParam("id") UUID id) {
    return requests.history(EntryKind.QUESTION, id);
  }

  @Keyed
  @WithEtag
  @POST
  @Path("{id}/answers")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "postAnswer",
      summary = "Answer a question",
      description = "Needs an Idempotency-Key.")
  @APIResponseSchema(value = TalkJson.class, responseCode = "201")
  public Response answer(@PathParam("id") UUID id, TalkRequest sent) {
    return requests.answer(id, sent);
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}/accepted")
  @RolesAllowed(Role.WRITE)
  @Operation(
      operationId = "acceptAnswer",
      summary = "Say which answer helped",
      description = "Only who asked can; null takes it back. Needs If-Match of the question.")
  @APIResponseSchema(TalkJson.class)
  public Response accept(@PathParam("id") UUID id, Accepted sent) {
    return requests.answer(
        Response.ok(), accepted.accept(request.actor(), id, sent.answer(), request.version()));
  }
}
