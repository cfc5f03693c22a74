package club.emberwell.api.member;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.LocalSignIn;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.member.Role;
import club.emberwell.member.account.NewPasswords;
import club.emberwell.member.account.PasswordResets;
import club.emberwell.member.account.PasswordResets.HandedOver;
import club.emberwell.member.session.Proof.Given;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** New passwords for people who lost theirs. None of these takes an Idempotency-Key. */
@Path("/api/v1/password-resets")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@LocalSignIn
@Tag(name = "Members")
public class PasswordResetResource {
  private final PasswordResets resets;
  private final NewPasswords passwords;
  private final CurrentActor actor;
  private final ClientAddress client;

  PasswordResetResource(
      PasswordResets resets, NewPasswords passwords, CurrentActor actor, ClientAddress client) {
    this.resets = resets;
    this.passwords = passwords;
    this.actor = actor;
    this.client = client;
  }

  /** Whose password is lost. */
  @Schema(
      name = "PasswordResetRequest",
      requiredProperties = {"email"})
  public record Asked(String email) {}

  /**
   * The new password.
   *
   * @param link the secret at the end of the link
   */
  @Schema(
      name = "PasswordResetRedeemed",
      requiredProperties = {"link", "password"})
  public record Redeemed(String link, String password) {}

  /**
   * For whom an owner wants a link.
   *
   * @param password the owner's own
   */
  @Schema(
      name = "PasswordLinkRequest",
      requiredProperties = {"handle", "password"})
  public record Named(String handle, String password) {}

  @POST
  @PermitAll
  @Operation(
      operationId = "askPasswordReset",
      summary = "Ask for a link by mail",
      description =
          "202 whether or not anybody has this address; 403 where this server sends no mail.")
  @APIResponse(responseCode = "202")
  @Fails(ProblemKind.DOOR_CLOSED)
  public Response ask(Asked asked) {
    resets.ask(asked.email(), client.prefix());
    return Response.accepted().build();
  }

  @POST
  @Path("redeem")
  @PermitAll
  @Operation(
      operationId = "redeemPasswordReset",
      summary = "Choose a new password by a link",
      description = "Ends every session and token.")
  public void redeem(Redeemed redeemed) {
    passwords.redeem(redeemed.link(), redeemed.password(), client.prefix());
  }

  @POST
  @Path("links")
  @RolesAllowed(Role.OWN)
  @Fails({ProblemKind.NOT_FOUND, ProblemKind.CONFIRMATION_REQUIRED})
  @Operation(
      operationId = "makePasswordLink",
      summary = "Make a link to hand over, for clubs without mail",
      description =
          "It works for an hour; the making is logged. A token alone is not enough: send your own"
              + " password too.")
  @APIResponseSchema(value = HandedOver.class, responseCode = "201")
  public Response link(Named named) {
    Given given = new Given(actor.credential(), named.password(), client.prefix());
    HandedOver link =
        Proofs.at("/password", () -> resets.handOver(actor.get(), named.handle(), given));
    return Response.created(URI.create(link.url()))
        .header("Cache-Control", "no-store")
        .entity(link)
        .build();
  }
}
