package club.emberwell.api.member;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.member.Role;
import club.emberwell.member.account.Addresses;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The member's mail address. */
@Path("/api/v1/me/email")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Members")
public class AddressResource {
  private final Addresses addresses;
  private final CurrentActor actor;
  private final ClientAddress client;

  AddressResource(Addresses addresses, CurrentActor actor, ClientAddress client) {
    this.addresses = addresses;
    this.actor = actor;
    this.client = client;
  }

  /**
   * The new address.
   *
   * @param email empty takes the old one away
   */
  @Schema(name = "EmailChange")
  public record Entry(String email, String password) {}

  @POST
  @RolesAllowed(Role.WRITE)
  @Fails(ProblemKind.CONFIRMATION_REQUIRED)
  @Operation(
      operationId = "changeEmail",
      summary = "Change my mail address",
      description =
          "Where this server sends mail, a letter asks the new address for a yes. Takes no"
              + " Idempotency-Key: the same address twice changes nothing.")
  public void change(Entry entry) {
    Proofs.at(
        "/password",
        () ->
            addresses.change(
                actor.get(), actor.credential(), entry.email(), entry.password(), client.prefix()));
  }
}
