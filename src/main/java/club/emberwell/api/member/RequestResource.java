package club.emberwell.api.member;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.MemberJson;
import club.emberwell.member.Role;
import club.emberwell.member.door.JoinRequests;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** People who asked to come in. */
@Path("/api/v1/requests")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Club")
public class RequestResource {
  private final JoinRequests requests;
  private final CurrentActor actor;

  RequestResource(JoinRequests requests, CurrentActor actor) {
    this.requests = requests;
    this.actor = actor;
  }

  /** Somebody who waits, with what they say about themselves. */
  @Schema(name = "WaitingMember")
  record WaitingJson(MemberJson member, String text, Instant createdAt) {
    static WaitingJson of(JoinRequests.Waiting w) {
      return new WaitingJson(MemberJson.of(w.member(), w.handle()), w.text(), w.askedAt());
    }
  }

  /**
   * Yes or no.
   *
   * @param reason for the person; needed for a no
   */
  @Schema(
      name = "JoinDecision",
      requiredProperties = {"accept"})
  public record Decision(Boolean accept, String reason) {}

  @GET
  @Operation(operationId = "listJoinRequests", summary = "Who waits at the door, oldest first")
  public ListJson<WaitingJson> list() {
    return ListJson.of(requests.waiting().stream().map(WaitingJson::of).toList());
  }

  @POST
  @Path("{member}/decision")
  @Operation(
      operationId = "decideJoinRequest",
      summary = "Let somebody in or turn them away",
      description = "Takes no Idempotency-Key: a request is decided once.")
  public void decide(@PathParam("member") UUID member, Decision decision) {
    if (decision.accept() == null) {
      throw Problems.at(ProblemKind.INVALID_REQUEST, "/accept", "Say true or false.").exception();
    }
    requests.decide(actor.get(), member, decision.accept(), decision.reason());
  }
}
