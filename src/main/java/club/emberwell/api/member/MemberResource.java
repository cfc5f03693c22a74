package club.emberwell.api.member;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.ClientAddress;
import club.emberwell.access.LocalSignIn;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.member.MemberStatus;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.door.Doors;
import club.emberwell.member.door.NewMember;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Joining the club, and who its members are. */
@Path(ApiPaths.BASE + "/members")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Members")
public class MemberResource {
  private final Doors doors;
  private final Members members;
  private final ClientAddress client;

  MemberResource(Doors doors, Members members, ClientAddress client) {
    this.doors = doors;
    this.members = members;
    this.client = client;
  }

  /**
   * What a new member sends.
   *
   * @param email may be left out
   * @param invitation the code at the end of an invitation link; or left out
   * @param request where the door opens on request: what somebody says who asks; or left out
   */
  @Schema(
      name = "JoinRequest",
      requiredProperties = {"handle", "password"})
  public record Entry(
      String handle, String email, String password, String invitation, String request) {}

  /** What everybody may know of a member. */
  @Schema(name = "MemberCard")
  public record Card(UUID id, String handle, Role role, Instant createdAt) {
    /** The card of an account. */
    public static Card of(MemberView member) {
      return new Card(member.id(), member.handle(), member.role(), member.createdAt());
    }
  }

  @POST
  @PermitAll
  @LocalSignIn
  @Operation(
      operationId = "joinClub",
      summary = "Join: 201, or 202 for a request that waits for a moderator",
      description =
          "The club's door decides: open, on request, or by invitation (403 without one). Takes no"
              + " Idempotency-Key: a name can be taken only once.")
  @APIResponseSchema(value = Card.class, responseCode = "201")
  @APIResponse(
      responseCode = "202",
      description = "The request waits for a moderator.",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(implementation = Card.class)))
  @Fails(ProblemKind.DOOR_CLOSED)
  public Response join(Entry entry) {
    NewMember newcomer = new NewMember(entry.handle(), entry.email(), entry.password());
    MemberView member = doors.enter(newcomer, entry.invitation(), entry.request(), client.prefix());
    if (member.status() == MemberStatus.WAITING) {
      return Response.accepted(Card.of(member)).build();
    }
    return Response.created(URI.create(ApiPaths.BASE + "/members/" + member.id()))
        .entity(Card.of(member))
        .build();
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  @Operation(operationId = "getMember", summary = "A member's card")
  public Card card(@PathParam("id") UUID id) {
    return members
        .byId(id)
        .filter(m -> m.status() != MemberStatus.WAITING)
        .map(Card::of)
        .orElseThrow(() -> Problems.notFound().exception());
  }
}
