package club.emberwell.api.member;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.CurrentActor;
import club.emberwell.api.view.ListJson;
import club.emberwell.member.Role;
import club.emberwell.member.session.SignInEvent;
import club.emberwell.member.session.SignIns;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** Who came in as the member, and from where. */
@Path(ApiPaths.BASE)
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Members")
public class SignInResource {
  private final SignIns signIns;
  private final CurrentActor actor;

  SignInResource(SignIns signIns, CurrentActor actor) {
    this.signIns = signIns;
    this.actor = actor;
  }

  /**
   * One sign-in, or what else tells who used the account.
   *
   * @param network from where: the first 24 bits of an IPv4 address, 64 of an IPv6 one
   * @param label the browser in words, or what the token is for; may be empty
   */
  @Schema(name = "SignIn")
  record SignInJson(Instant at, SignInEvent event, String network, String label) {
    static SignInJson of(SignIns.View view) {
      return new SignInJson(view.at(), view.event(), view.network(), view.label());
    }
  }

  @GET
  @Path("me/sign-ins")
  @Operation(
      operationId = "listSignIns",
      summary = "Who came in as me, was kept out, or left",
      description = "The newest 100 of the last 90 days, newest first.")
  public ListJson<SignInJson> list() {
    return ListJson.of(signIns.of(actor.get().memberId()).stream().map(SignInJson::of).toList());
  }
}
