package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskRequests.Why;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.catalog.store.CautionCare.Standing;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.desk.word.VocabularyCare.Change;
import club.emberwell.listing.Slice;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** Cautions with their standing; a second moderator confirms a removal. */
@Path("/api/v1/desk/cautions")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class CautionResource {
  private final VocabularyCare care;
  private final ApiRequest request;

  CautionResource(VocabularyCare care, ApiRequest request) {
    this.care = care;
    this.request = request;
  }

  @GET
  @Operation(summary = "Every caution with its standing")
  public List<Standing> all() {
    return care.cautions(request.actor());
  }

  @GET
  @Path("{id}")
  @Operation(summary = "One caution")
  public Standing one(@RestPath String id) {
    return care.caution(request.actor(), id);
  }

  @GET
  @Path("{id}/history")
  @Operation(summary = "What happened to a caution, newest first")
  public Slice<Change> history(@RestPath String id, @BeanParam ListQuery list) {
    return care.cautionHistory(id, list.part());
  }

  @POST
  @Path("{id}/removal")
  @Operation(summary = "Propose to remove a caution")
  public Response remove(@RestPath String id, Why sent) {
    return request.done(sent, actor -> care.proposeRemoval(actor, id, sent.reason()));
  }

  @POST
  @Path("{id}/removal/confirm")
  @Operation(summary = "Confirm as a second moderator that a caution goes")
  public Response confirm(@RestPath String id, Why sent) {
    return request.done(sent, actor -> care.confirmRemoval(actor, id, sent.reason()));
  }

  @POST
  @Path("{id}/removal/decline")
  @Operation(summary = "Let a caution stand")
  public Response keep(@RestPath String id, Why sent) {
    return request.done(sent, actor -> care.keepStanding(actor, id, sent.reason()));
  }

  @POST
  @Path("{id}/restore")
  @Operation(summary = "Bring a removed caution back")
  public Response restore(@RestPath String id, Why sent) {
    return request.done(sent, actor -> care.restoreCaution(actor, id, sent.reason()));
  }
}
