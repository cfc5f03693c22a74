package club.emberwell.api.member;

import club.emberwell.access.ClientAddress;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.member.club.ClubCare;
import club.emberwell.member.club.ClubOptions;
import club.emberwell.member.club.ClubOptions.Card;
import club.emberwell.member.club.ClubOptions.Door;
import club.emberwell.member.club.ClubOptions.Terms;
import club.emberwell.member.mail.MailOutbox;
import club.emberwell.member.session.Proof.Given;
import club.emberwell.member.session.SignInProvider;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What the club is called, how one comes in, and under which terms one shares. */
@Path("/api/v1/club")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Club")
public class ClubResource {
  private final ClubOptions club;
  private final ClubCare care;
  private final MailOutbox mail;
  private final SignInProvider provider;
  private final ApiRequest request;
  private final ClientAddress client;

  ClubResource(
      ClubOptions club,
      ClubCare care,
      MailOutbox mail,
      SignInProvider provider,
      ApiRequest request,
      ClientAddress client) {
    this.club = club;
    this.care = care;
    this.mail = mail;
    this.provider = provider;
    this.request = request;
    this.client = client;
  }

  /**
   * The club as everybody may know it.
   *
   * @param door open, request or invitation
   * @param reading public or members
   * @param singleSignOn what the sign-in provider is called; left out where there is none
   * @param mail whether this server sends mail
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Club(
      String name,
      Door door,
      String reading,
      boolean localSignIn,
      @Nullable String singleSignOn,
      boolean mail,
      @JsonUnwrapped Terms terms,
      @JsonUnwrapped More more) {}

  /**
   * What else owners decided.
   *
   * @param photoMegabytes of pictures that the club keeps for one member
   */
  public record More(String notes, int photoMegabytes) {}

  @WithEtag
  @GET
  @PermitAll
  @Operation(operationId = "getClub", summary = "The club")
  @APIResponseSchema(Club.class)
  public Response get() {
    return answer(club.card());
  }

  @IfMatch
  @WithEtag
  @PUT
  @RolesAllowed(Role.OWN)
  @Operation(
      operationId = "changeClub",
      summary = "Change the club's settings",
      description =
          "Needs If-Match. Where who joins, reads or signs in changes, a token alone is not enough:"
              + " send your password too.")
  @APIResponseSchema(Club.class)
  @Fails(ProblemKind.CONFIRMATION_REQUIRED)
  public Response change(ClubCare.Draft draft) {
    int version = request.version();
    Given given = new Given(request.credential(), draft.password(), client.prefix());
    return answer(
        Proofs.at("/password", () -> care.change(request.actor(), draft, version, given)));
  }

  private Response answer(Card card) {
    Club shown =
        new Club(
            card.name(),
            card.door(),
            card.readingPublic() ? "public" : "members",
            card.localSignIn(),
            provider.issuer().map(issuer -> provider.label()).orElse(null),
            mail.available(),
            card.terms(),
            new More(card.notes(), card.photoMegabytes()));
    return ApiRequest.answer(Response.ok(), card.version(), shown);
  }
}
