package club.emberwell.api.member;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.AtAnyPace;
import club.emberwell.access.ClientAddress;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.LocalSignIn;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.member.Role;
import club.emberwell.member.session.Tokens;
import club.emberwell.member.session.Tokens.NewToken;
import club.emberwell.member.session.Tokens.TokenView;
import club.emberwell.member.session.Tokens.Wish;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Tokens for programs. */
@Path(ApiPaths.BASE + "/tokens")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Tokens")
public class TokenResource {
  private final Tokens tokens;
  private final CurrentActor actor;
  private final ClientAddress client;

  TokenResource(Tokens tokens, CurrentActor actor, ClientAddress client) {
    this.tokens = tokens;
    this.actor = actor;
    this.client = client;
  }

  /**
   * What proves who asks for a token.
   *
   * @param label what its owner will know it by
   * @param scopes read, write, moderate; left out: all one has a use for
   */
  @Schema(
      name = "TokenRequest",
      requiredProperties = {"handle", "password", "label"})
  public record Entry(String handle, String password, String label, List<String> scopes) {}

  /**
   * A token as its owner sees it.
   *
   * @param lastUsedAt up to a minute late; left out if never
   */
  @Schema(name = "Token")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record TokenJson(
      UUID id,
      String label,
      List<String> scopes,
      Instant createdAt,
      Instant expires,
      @Nullable Instant lastUsedAt) {
    static TokenJson of(TokenView t) {
      return new TokenJson(t.id(), t.label(), t.scopes(), t.createdAt(), t.expires(), t.lastUsed());
    }
  }

  @POST
  @PermitAll
  @LocalSignIn
  @Operation(
      operationId = "createToken",
      summary = "Get a token",
      description =
          "It is shown this once. scopes says what it may be used for: read for every GET, write"
              + " for what changes something, moderate for acting as the moderator or owner one"
              + " is (without it the token counts as a member's). Left out, it has all that its"
              + " owner's role can use today. A request without the scope it needs is answered"
              + " 403. Takes no Idempotency-Key: a secret is never kept.")
  @APIResponseSchema(value = NewToken.class, responseCode = "201")
  @Fails(ProblemKind.ACCOUNT_CLOSED)
  public Response create(Entry entry) {
    NewToken token =
        tokens.create(
            entry.handle(),
            entry.password(),
            new Wish(entry.label(), entry.scopes()),
            client.prefix());
    return Response.created(URI.create(ApiPaths.BASE + "/tokens/" + token.id()))
        .header("Cache-Control", "no-store")
        .entity(token)
        .build();
  }

  @GET
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "listTokens", summary = "My tokens that still work")
  public ListJson<TokenJson> list() {
    return ListJson.of(tokens.of(actor.get().memberId()).stream().map(TokenJson::of).toList());
  }

  @GET
  @Path("{id}")
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "getToken", summary = "One of my tokens")
  public TokenJson get(@PathParam("id") UUID id) {
    return tokens
        .of(actor.get().memberId(), id)
        .map(TokenJson::of)
        .orElseThrow(() -> Problems.notFound().exception());
  }

  @DELETE
  @AtAnyPace
  @Path("{id}")
  @RolesAllowed(Role.WRITE)
  @Operation(operationId = "revokeToken", summary = "End one of my tokens")
  public void revoke(@PathParam("id") UUID id) {
    if (!tokens.revoke(actor.get().memberId(), id)) {
      throw Problems.notFound().exception();
    }
  }
}
