package club.emberwell.api.member;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.member.MemberView;
import club.emberwell.member.door.FirstOwner;
import club.emberwell.member.door.NewMember;
import jakarta.annotation.security.PermitAll;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The start of a club: its first owner. */
@Path("/api/v1/first-owner")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Club")
public class FirstOwnerResource {
  private final FirstOwner first;
  private final ClientAddress client;

  FirstOwnerResource(FirstOwner first, ClientAddress client) {
    this.first = first;
    this.client = client;
  }

  /**
   * Who founds the club.
   *
   * @param code as the server's log says it
   */
  @Schema(
      name = "FirstOwnerRequest",
      requiredProperties = {"code", "handle", "password"})
  public record Entry(String code, String handle, String email, String password) {}

  @POST
  @PermitAll
  @Operation(
      operationId = "foundClub",
      summary = "Found the club with the code from the server's log",
      description = "404 once there is an owner. Takes no Idempotency-Key: it works once.")
  @APIResponseSchema(value = MemberResource.Card.class, responseCode = "201")
  @Fails(ProblemKind.NOT_FOUND)
  public Response found(Entry entry) {
    if (!first.wanted()) {
      throw Problems.notFound().exception();
    }
    NewMember newcomer = new NewMember(entry.handle(), entry.email(), entry.password());
    MemberView owner = first.found(entry.code(), newcomer, client.prefix());
    return Response.created(URI.create("/api/v1/members/" + owner.id()))
        .entity(MemberResource.Card.of(owner))
        .build();
  }
}
