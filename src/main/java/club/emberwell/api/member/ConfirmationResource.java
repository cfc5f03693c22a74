package club.emberwell.api.member;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.member.account.Addresses;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Answers to the letters that ask whether an address is somebody's. */
@Path("/api/v1/email-confirmations")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Members")
public class ConfirmationResource {
  private final Addresses addresses;

  ConfirmationResource(Addresses addresses) {
    this.addresses = addresses;
  }

  /** The secret at the end of the link in the letter. */
  @Schema(
      name = "EmailConfirmation",
      requiredProperties = {"link"})
  public record Confirmation(String link) {}

  @POST
  @PermitAll
  @Operation(
      operationId = "confirmEmail",
      summary = "Say that a mail address is mine, by the link in the letter",
      description = "Takes no Idempotency-Key: a link works once.")
  @Fails(ProblemKind.NOT_FOUND)
  public void confirm(Confirmation confirmation) {
    if (confirmation.link() == null || !addresses.confirm(confirmation.link())) {
      throw Problems.of(ProblemKind.NOT_FOUND, "This link was used, is too old, or never was.")
          .exception();
    }
  }
}
