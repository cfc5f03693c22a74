package club.emberwell.api.access;

import club.emberwell.member.Accounts;
import club.emberwell.member.Accounts.NewMember;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
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
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Joining the club, and who its members are. */
@Path(ApiPaths.BASE + "/members")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Members")
public class MemberResource {
  private final Accounts accounts;
  private final Members members;
  private final ClientAddress client;

  MemberResource(Accounts accounts, Members members, ClientAddress client) {
    this.accounts = accounts;
    this.members = members;
    this.client = client;
  }

  /**
   * What a new member sends.
   *
   * @param email may be left out
   */
  public record Entry(String handle, String email, String password) {}

  /** What everybody may know of a member. */
  public record Card(UUID id, String handle, String role, Instant since) {
    static Card of(MemberView member) {
      return new Card(
          member.id(), member.handle(), MeResource.code(member.role()), member.createdAt());
    }
  }

  @POST
  @PermitAll
  @Operation(
      summary = "Join, where the club's door is open",
      description = "Takes no Idempotency-Key: a name can be taken only once.")
  public Response join(Entry entry) {
    MemberView member =
        Problems.unwrap(
            accounts.register(
                new NewMember(entry.handle(), entry.email(), entry.password()), client.prefix()));
    return Response.created(URI.create(ApiPaths.BASE + "/members/" + member.id()))
        .entity(Card.of(member))
        .build();
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.READ)
  @Operation(summary = "A member's card")
  public Card card(@PathParam("id") UUID id) {
    return members.byId(id).map(Card::of).orElseThrow(() -> Problems.notFound().exception());
  }
}
