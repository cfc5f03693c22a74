package club.emberwell.api.member;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.Problems;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.MemberJson;
import club.emberwell.member.Role;
import club.emberwell.member.door.Invitations;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
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
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Links that let people in. */
@Path("/api/v1/invitations")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Club")
public class InvitationResource {
  private final Invitations invitations;
  private final CurrentActor actor;
  private final PublicUrl url;

  InvitationResource(Invitations invitations, CurrentActor actor, PublicUrl url) {
    this.invitations = invitations;
    this.actor = actor;
    this.url = url;
  }

  /** A fresh invitation: the code, and the link to hand on. */
  @Schema(name = "NewInvitation")
  public record Made(UUID id, String code, String url, int uses, Instant expires) {}

  /**
   * An invitation as moderators see it.
   *
   * @param note for whom it is; left out where nobody said
   * @param works whether somebody could still come in by it
   */
  @Schema(name = "Invitation")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record InvitationJson(
      UUID id,
      MemberJson by,
      @Nullable String note,
      @JsonUnwrapped Invitations.Uses counted,
      Instant createdAt,
      Instant expires,
      @Nullable Instant revokedAt,
      boolean works) {
    static InvitationJson of(Invitations.View v) {
      return new InvitationJson(
          v.id(),
          MemberJson.of(v.by().id(), v.by().handle()),
          v.note(),
          v.counted(),
          v.createdAt(),
          v.expires(),
          v.revokedAt(),
          v.works());
    }
  }

  @POST
  @Operation(
      operationId = "invite",
      summary = "Invite people",
      description =
          "The link is shown this once. Takes no Idempotency-Key: a secret is never kept.")
  @APIResponseSchema(value = Made.class, responseCode = "201")
  public Response make(Invitations.Draft draft) {
    Invitations.Fresh fresh = invitations.make(actor.get(), draft);
    String link = url.of("/invitation/" + fresh.code());
    return Response.created(URI.create("/api/v1/invitations/" + fresh.id()))
        .header("Cache-Control", "no-store")
        .entity(new Made(fresh.id(), fresh.code(), link, fresh.uses(), fresh.expires()))
        .build();
  }

  @GET
  @Operation(operationId = "listInvitations", summary = "The latest invitations")
  public ListJson<InvitationJson> list() {
    return ListJson.of(invitations.latest().stream().map(InvitationJson::of).toList());
  }

  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "revokeInvitation",
      summary = "End an invitation; who came in by it stays")
  public void revoke(@PathParam("id") UUID id) {
    if (!invitations.revoke(actor.get(), id)) {
      throw Problems.notFound().exception();
    }
  }
}
