package club.emberwell.api.member;

import club.emberwell.access.ApiPaths;
import club.emberwell.access.AtAnyPace;
import club.emberwell.access.ClientAddress;
import club.emberwell.access.LocalSignIn;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Licence;
import club.emberwell.member.MemberView;
import club.emberwell.member.Members;
import club.emberwell.member.Role;
import club.emberwell.member.account.Accounts;
import club.emberwell.member.account.NewPasswords;
import club.emberwell.member.session.Sessions;
import club.emberwell.member.session.Sessions.SessionView;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Unproven;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The member's own account. */
@Path(ApiPaths.BASE)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Members")
public class MeResource {
  private final Accounts accounts;
  private final NewPasswords passwords;
  private final Members members;
  private final Sessions sessions;
  private final ApiRequest request;
  private final ClientAddress client;

  MeResource(
      Accounts accounts,
      NewPasswords passwords,
      Members members,
      Sessions sessions,
      ApiRequest request,
      ClientAddress client) {
    this.accounts = accounts;
    this.passwords = passwords;
    this.members = members;
    this.sessions = sessions;
    this.request = request;
    this.client = client;
  }

  /**
   * How numbers are read and written, and how what is posted from now on may be used.
   *
   * @param numberStyle any, point or comma
   * @param units kind of quantity -> UCUM code; canonical where missing
   * @param licence SPDX id; missing = what the club decided
   * @param named whether data that leave the club name the member as author; missing = they do
   */
  @Schema(name = "Preferences")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record PreferencesEntry(
      String numberStyle, Map<String, String> units, Licence licence, Boolean named) {
    private Accounts.Wish wish() {
      return new Accounts.Wish(numberStyle, units, licence == null ? null : licence.code(), named);
    }
  }

  /**
   * A new password, and the present one as proof.
   *
   * @param keepTokens whether tokens go on; left out: they end
   */
  @Schema(
      name = "PasswordChange",
      requiredProperties = {"current", "password"})
  public record PasswordEntry(String current, String password, @Nullable Boolean keepTokens) {
    private NewPasswords.Wish wish() {
      return new NewPasswords.Wish(current, password, Boolean.TRUE.equals(keepTokens));
    }
  }

  /** The account as its owner sees it. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  public record Me(
      UUID id,
      String handle,
      @Nullable String email,
      boolean emailConfirmed,
      Role role,
      Instant createdAt,
      PreferencesEntry preferences) {
    static Me of(MemberView member) {
      Map<String, String> units = new TreeMap<>();
      member.units().units().forEach((kind, code) -> units.put(kind.code(), code));
      return new Me(
          member.id(),
          member.handle(),
          member.email(),
          member.emailConfirmed(),
          member.role(),
          member.createdAt(),
          new PreferencesEntry(
              member.units().style().code(),
              units,
              member.sharing().licence(),
              member.sharing().named()));
    }
  }

  /**
   * Where the member is signed in.
   *
   * @param label device and browser in words, as "Phone (Android), Firefox"
   */
  @Schema(name = "Session")
  record SessionJson(
      UUID id, String label, Instant createdAt, Instant lastUsedAt, Instant expires) {
    static SessionJson of(SessionView s) {
      return new SessionJson(s.id(), s.label(), s.createdAt(), s.lastSeen(), s.expires());
    }
  }

  @WithEtag
  @GET
  @Path("me")
  @Operation(operationId = "getMe", summary = "My account")
  @APIResponseSchema(Me.class)
  public Response get() {
    return answer(members.byId(request.actor().memberId()).orElseThrow());
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("me/preferences")
  @Operation(
      operationId = "setPreferences",
      summary = "Choose units, the decimal mark, and how others may use what I post",
      description = "Needs If-Match.")
  @APIResponseSchema(Me.class)
  public Response prefer(PreferencesEntry entry) {
    int version = request.version();
    return answer(accounts.prefer(request.actor(), entry.wish(), version));
  }

  @POST
  @Path("me/password")
  @LocalSignIn
  @Operation(
      operationId = "changePassword",
      summary = "Change the password",
      description = "Ends every session and, unless keepTokens is true, every token: this one too.")
  public void changePassword(PasswordEntry entry) {
    try {
      passwords.change(request.actor(), entry.wish(), null, client.prefix());
    } catch (Unproven e) {
      // the caller is known: what is wrong is the field
      throw new EntryRefused(
          RemarkId.PASSWORD_WRONG, "/current", "This is not your present password.");
    }
  }

  @GET
  @Path("me/sessions")
  @Operation(operationId = "listSessions", summary = "Where I am signed in")
  public ListJson<SessionJson> sessions() {
    return ListJson.of(
        sessions.of(request.actor().memberId()).stream().map(SessionJson::of).toList());
  }

  @DELETE
  @AtAnyPace
  @Path("me/sessions/{id}")
  @Operation(operationId = "endSession", summary = "Sign one browser out")
  public void endSession(@PathParam("id") UUID id) {
    if (!sessions.end(request.actor().memberId(), id)) {
      throw Problems.notFound().exception();
    }
  }

  @DELETE
  @AtAnyPace
  @Path("me/sessions")
  @Operation(operationId = "endSessions", summary = "Sign every browser out")
  public void endSessions() {
    sessions.endAll(request.actor().memberId());
  }

  private static Response answer(MemberView member) {
    return ApiRequest.answer(Response.ok(), member.version(), Me.of(member));
  }
}
