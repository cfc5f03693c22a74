package club.emberwell.api.member;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Accounts;
import club.emberwell.member.account.Accounts.Appointment;
import club.emberwell.member.session.Proof.Given;
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
import org.jspecify.annotations.Nullable;

/** Who is in charge. */
@Path("/api/v1/roles")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Club")
public class RoleResource {
  private final Accounts accounts;
  private final Members members;
  private final CurrentActor actor;
  private final ClientAddress client;

  RoleResource(Accounts accounts, Members members, CurrentActor actor, ClientAddress client) {
    this.accounts = accounts;
    this.members = members;
    this.actor = actor;
    this.client = client;
  }

  /**
   * A role to give.
   *
   * @param role member, moderator or owner
   * @param password the owner's own, to give or take ownership; else left out
   */
  @Schema(
      name = "RoleRequest",
      requiredProperties = {"handle", "role"})
  public record Entry(
      String handle,
      @Schema(enumeration = {"member", "moderator", "owner"}) String role,
      String reason,
      @Nullable String password) {}

  @GET
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "listRoles", summary = "Owners and moderators")
  public ListJson<MemberResource.Card> list() {
    return ListJson.of(members.inCharge().stream().map(MemberResource.Card::of).toList());
  }

  @POST
  @RolesAllowed(Role.OWN)
  @Fails(ProblemKind.CONFIRMATION_REQUIRED)
  @Operation(
      operationId = "giveRole",
      summary = "Give somebody a role",
      description =
          "The last owner stays one (403). Who makes or unmakes an owner sends their password, as a"
              + " token alone is not enough. Takes no Idempotency-Key: giving the same role again"
              + " changes nothing.")
  public MemberResource.Card give(Entry entry) {
    Appointment wanted = new Appointment(entry.handle(), entry.role(), entry.reason());
    Given given = new Given(actor.credential(), entry.password(), client.prefix());
    return MemberResource.Card.of(
        Proofs.at("/password", () -> accounts.appoint(actor.get(), wanted, given)));
  }
}
