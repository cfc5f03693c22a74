package club.emberwell.api.member;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.member.Role;
import club.emberwell.member.account.SignOuts;
import club.emberwell.member.account.SignOuts.Wish;
import club.emberwell.member.session.Proof.Given;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Signing others out. */
@Path("/api/v1/sign-outs")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Club")
public class SignOutResource {
  private final SignOuts signOuts;
  private final CurrentActor actor;
  private final ClientAddress client;

  SignOutResource(SignOuts signOuts, CurrentActor actor, ClientAddress client) {
    this.signOuts = signOuts;
    this.actor = actor;
    this.client = client;
  }

  /**
   * Whom to sign out.
   *
   * @param handle one member; left out where it is everybody
   * @param everybody true: the whole club
   * @param keepTokens whether tokens go on; left out: they end
   * @param password the owner's own
   */
  @Schema(
      name = "SignOutRequest",
      requiredProperties = {"reason"})
  public record Entry(
      @Nullable String handle,
      @Nullable Boolean everybody,
      @Nullable Boolean keepTokens,
      String reason,
      @Nullable String password) {
    private Wish wish() {
      return new Wish(
          handle, Boolean.TRUE.equals(everybody), Boolean.TRUE.equals(keepTokens), reason);
    }
  }

  @POST
  @RolesAllowed(Role.OWN)
  @Fails(ProblemKind.CONFIRMATION_REQUIRED)
  @Operation(
      operationId = "signOut",
      summary = "Sign one member or everybody out",
      description =
          "Ends every session and, unless keepTokens is true, every token: of everybody also yours."
              + " A token alone is not enough: send your password too. Takes no Idempotency-Key:"
              + " twice is once.")
  public void signOut(Entry entry) {
    Given given = new Given(actor.credential(), entry.password(), client.prefix());
    Proofs.at("/password", () -> signOuts.signOut(actor.get(), entry.wish(), given));
  }
}
