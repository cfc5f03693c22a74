package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskRequests.Why;
import club.emberwell.api.desk.WordsJson.RemovalView;
import club.emberwell.api.desk.WordsJson.StandingView;
import club.emberwell.api.desk.WordsJson.VersionView;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.view.MemberJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.catalog.store.CautionCare.Standing;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.member.Members;
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
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
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
  private final Members members;
  private final ApiRequest request;

  CautionResource(VocabularyCare care, Members members, ApiRequest request) {
    this.care = care;
    this.members = members;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listCautions", summary = "Every caution with its standing")
  public ListJson<StandingView> all() {
    return ListJson.of(views(care.cautions(request.actor())));
  }

  @GET
  @Path("{id}")
  @Operation(operationId = "getCaution", summary = "One caution")
  public StandingView one(@RestPath String id) {
    return views(List.of(care.caution(request.actor(), id))).get(0);
  }

  @GET
  @Path("{id}/history")
  @Operation(
      operationId = "listCautionVersions",
      summary = "What happened to a caution, newest first")
  public ListJson<VersionView> history(@RestPath String id, @BeanParam ListQuery list) {
    return ListJson.of(care.cautionHistory(id, list.part()), VersionView::of);
  }

  @Keyed
  @POST
  @Path("{id}/removal")
  @Operation(operationId = "proposeCautionRemoval", summary = "Propose to remove a caution")
  @APIResponse(responseCode = "204")
  public Response remove(@RestPath String id, Why sent) {
    return request.done(sent, actor -> care.proposeRemoval(actor, id, sent.reason()));
  }

  @Keyed
  @POST
  @Path("{id}/removal/confirm")
  @Operation(
      operationId = "confirmCautionRemoval",
      summary = "Confirm as a second moderator that a caution goes")
  @APIResponse(responseCode = "204")
  public Response confirm(@RestPath String id, Why sent) {
    return request.done(sent, actor -> care.confirmRemoval(actor, id, sent.reason()));
  }

  @Keyed
  @POST
  @Path("{id}/removal/decline")
  @Operation(operationId = "declineCautionRemoval", summary = "Let a caution stand")
  @APIResponse(responseCode = "204")
  public Response keep(@RestPath String id, Why sent) {
    return request.done(sent, actor -> care.keepStanding(actor, id, sent.reason()));
  }

  @Keyed
  @POST
  @Path("{id}/restore")
  @Operation(operationId = "restoreCaution", summary = "Bring a removed caution back")
  @APIResponse(responseCode = "204")
  public Response restore(@RestPath String id, Why sent) {
    return request.done(sent, actor -> care.restoreCaution(actor, id, sent.reason()));
  }

  private List<StandingView> views(List<Standing> cautions) {
    List<UUID> people =
        cautions.stream()
            .map(Standing::removalAskedBy)
            .filter(Objects::nonNull)
            .distinct()
            .toList();
    Map<UUID, String> names = members.labels(people);
    return cautions.stream().map(caution -> view(caution, names)).toList();
  }

  private static StandingView view(Standing s, Map<UUID, String> names) {
    UUID by = s.removalAskedBy();
    RemovalView removal =
        by == null
            ? null
            : new RemovalView(
                MemberJson.of(by, names.get(by)), s.removalReason(), s.removalAskedAt());
    return new StandingView(s.rule(), s.origin(), s.version(), s.removed(), removal);
  }
}
