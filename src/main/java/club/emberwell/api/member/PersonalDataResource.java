package club.emberwell.api.member;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.Downloads;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.exchange.Eraser;
import club.emberwell.exchange.MemberDownload;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** All of one's data, and the way out. */
@Path("/api/v1")
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Members")
public class PersonalDataResource {
  private final MemberDownload download;
  private final Eraser eraser;
  private final CurrentActor actor;
  private final ClientAddress client;

  PersonalDataResource(
      MemberDownload download, Eraser eraser, CurrentActor actor, ClientAddress client) {
    this.download = download;
    this.eraser = eraser;
    this.actor = actor;
    this.client = client;
  }

  /**
   * How to be forgotten.
   *
   * @param choice keep: measurements stay as by a former member; remove: they go too
   */
  @Schema(
      name = "ErasureRequest",
      requiredProperties = {"choice"})
  public record Farewell(
      @Schema(enumeration = {"keep", "remove"}) String choice, String password) {}

  @GET
  @Path("me/data")
  @Produces("application/zip")
  @Fails(ProblemKind.TOO_FAST)
  @Operation(operationId = "downloadMyData", summary = "All of my data in one zip file")
  public Response data() {
    return Downloads.once(download.pack(actor.get()));
  }

  @POST
  @Path("me/erasure")
  @Fails(ProblemKind.CONFIRMATION_REQUIRED)
  @Produces(MediaType.APPLICATION_JSON)
  @Operation(
      operationId = "eraseMe",
      summary = "Erase my account, at once and for good",
      description =
          "No name, address or text of mine remains. Takes no Idempotency-Key: who is gone cannot"
              + " ask twice.")
  public void erase(Farewell farewell) {
    Proofs.at(
        "/password",
        () ->
            eraser.erase(
                actor.get(),
                actor.credential(),
                farewell.choice(),
                farewell.password(),
                client.prefix()));
  }
}
