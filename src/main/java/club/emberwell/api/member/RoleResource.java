package club.emberwell.api.member;

import club.emberwell.access.CurrentActor;
import club.emberwell.api.view.ListJson;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Accounts;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Who is in charge. */
@Path("/api/v1/roles")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Club")
public class RoleResource {
  private final Accounts accounts;
  private final Members members;
  private final CurrentActor actor;

  RoleResource(Accounts accounts, Members members, CurrentActor actor) {
    this.accounts = accounts;
    this.members = members;
    this.actor = actor;
  }

  /**
   * A role to give.
   *
   * @param role member, moderator or owner
   */
  @Schema(
      name = "RoleRequest",
      requiredProperties = {"handle", "role"})
  public record Entry(
      String handle,
      @Schema(enumeration = {"member", "moderator", "owner"}) String role,
      String reason) {}

  @GET
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "listRoles", summary = "Owners and moderators")
  public ListJson<MemberResource.Card> list() {
    return ListJson.of(members.inCharge().stream().map(MemberResource.Card::of).toList());
  }

  @POST
  @RolesAllowed(Role.OWN)
  @Operation(
      operationId = "giveRole",
      summary = "Give somebody a role",
      description =
          "The last owner stays one (403). Takes no Idempotency-Key: giving the same role again"
              + " changes nothing.")
  public MemberResource.Card give(Entry entry) {
    return MemberResource.Card.of(
        accounts.appoint(actor.get(), entry.handle(), entry.role(), entry.reason()));
  }
}
