package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskJson.DecisionView;
import club.emberwell.api.desk.DeskJson.HomeView;
import club.emberwell.api.desk.DeskJson.ItemView;
import club.emberwell.api.desk.DeskJson.NoteView;
import club.emberwell.api.desk.DeskRequests.Decide;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.home.Desk;
import club.emberwell.desk.rule.Rules;
import club.emberwell.entry.Decision;
import club.emberwell.entry.EntryLife;
import club.emberwell.entry.EntryRef;
import club.emberwell.entry.Verdicts;
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
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** The first screen, what waits, and decisions. */
@Path("/api/v1/desk")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class DeskResource {
  private final Desk desk;
  private final EntryLife life;
  private final Verdicts verdicts;
  private final Rules rules;
  private final ApiRequest request;

  DeskResource(Desk desk, EntryLife life, Verdicts verdicts, Rules rules, ApiRequest request) {
    this.desk = desk;
    this.life = life;
    this.verdicts = verdicts;
    this.rules = rules;
    this.request = request;
  }

  @GET
  @Operation(operationId = "getDesk", summary = "Everything that waits, in short")
  public HomeView home() {
    return HomeView.of(desk.home(request.actor()));
  }

  @GET
  @Path("waiting")
  @Operation(
      operationId = "listWaitingItems",
      summary = "What waits for a first look, oldest first")
  public ListJson<ItemView> waiting(@BeanParam ListQuery list) {
    return ListJson.of(desk.waiting(request.actor(), list.part()), ItemView::of);
  }

  /** An item with what was said about it. */
  @Schema(name = "DeskItemWhole")
  record Whole(ItemView item, List<DecisionView> decisions, List<NoteView> ruleNotes) {}

  @GET
  @Path("items/{kind}/{id}")
  @Operation(operationId = "getDeskItem", summary = "An item with its decisions and notes")
  public Whole item(@RestPath String kind, @RestPath UUID id) {
    return whole(EntryRef.of(kind, id));
  }

  @Keyed
  @POST
  @Path("items/{kind}/{id}/decisions")
  @Operation(operationId = "decideItem", summary = "Decide about an item; never about one's own")
  @APIResponseSchema(Whole.class)
  public Response decide(@RestPath String kind, @RestPath UUID id, Decide sent) {
    EntryRef ref = EntryRef.of(kind, id);
    return request.did(
        sent,
        actor -> {
          life.decide(actor, ref, Decision.read("/action", sent.action()), sent.reason());
          return whole(ref);
        });
  }

  private Whole whole(EntryRef ref) {
    return new Whole(
        ItemView.of(desk.item(request.actor(), ref)),
        verdicts.about(request.actor(), ref).stream().map(DecisionView::of).toList(),
        rules.on(request.actor(), ref).stream().map(NoteView::of).toList());
  }
}
