package club.emberwell.api.member;

import club.emberwell.api.access.ClientAddress;
import club.emberwell.api.access.CurrentActor;
import club.emberwell.api.access.Problems;
import club.emberwell.member.Addresses;
import club.emberwell.member.Role;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The member's mail address. None of these takes an Idempotency-Key. */
@Path("/api/v1")
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
  public record Entry(String email, String password) {}

  /** The secret at the end of the link in the letter. */
  public record Confirmation(String link) {}

  @POST
  @Path("me/email")
  @RolesAllowed(Role.WRITE)
  @Operation(
      summary = "Change my mail address",
      description = "Where this server sends mail, a letter asks the new address for a yes.")
  public void change(Entry entry) {
    Proofs.unwrap(
        addresses.change(
            actor.get(), actor.credential(), entry.email(), entry.password(), client.prefix()));
  }

  @POST
  @Path("email-confirmations")
  @PermitAll
  @Operation(summary = "Say that a mail address is mine, by the link in the letter")
  public void confirm(Confirmation confirmation) {
    if (confirmation.link() == null || !addresses.confirm(confirmation.link())) {
      throw Problems.of(404, "This link was used, is too old, or never was.").exception();
    }
  }
}
