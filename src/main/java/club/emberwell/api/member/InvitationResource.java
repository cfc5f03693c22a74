package club.emberwell.api.member;

import club.emberwell.access.CurrentActor;
import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.Problems;
import club.emberwell.member.Role;
import club.emberwell.member.door.Invitations;
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
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

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
  public record Made(UUID id, String code, String url, int uses, Instant expires) {}

  /** The latest invitations. */
  public record Listing(List<Invitations.View> invitations) {}

  @POST
  @Operation(
      summary = "Invite people",
      description =
          "The link is shown this once. Takes no Idempotency-Key: a secret is never kept.")
  public Response make(Invitations.Draft draft) {
    Invitations.Fresh fresh = invitations.make(actor.get(), draft);
    String link = url.of("/invitation/" + fresh.code());
    return Response.status(Response.Status.CREATED)
        .header("Cache-Control", "no-store")
        .entity(new Made(fresh.id(), fresh.code(), link, fresh.uses(), fresh.expires()))
        .build();
  }

  @GET
  @Operation(summary = "The latest invitations")
  public Listing list() {
    return new Listing(invitations.latest());
  }

  @DELETE
  @Path("{id}")
  @Operation(summary = "End an invitation; who came in by it stays")
  public void revoke(@PathParam("id") UUID id) {
    if (!invitations.revoke(actor.get(), id)) {
      throw Problems.notFound().exception();
    }
  }
}
