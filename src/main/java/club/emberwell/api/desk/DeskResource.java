package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskJson.DecisionView;
import club.emberwell.api.desk.DeskJson.HomeView;
import club.emberwell.api.desk.DeskJson.ItemView;
import club.emberwell.api.desk.DeskJson.NoteView;
import club.emberwell.api.desk.DeskRequests.Decide;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.desk.Action;
import club.emberwell.desk.Decisions;
import club.emberwell.desk.Desk;
import club.emberwell.desk.ItemRef;
import club.emberwell.desk.Rules;
import club.emberwell.listing.Slice;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
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
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The first screen, what waits, and decisions. */
@Path("/api/v1/desk")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class DeskResource {
  private final Desk desk;
  private final Decisions decisions;
  private final Rules rules;
  private final ApiRequest request;

  DeskResource(Desk desk, Decisions decisions, Rules rules, ApiRequest request) {
    this.desk = desk;
    this.decisions = decisions;
    this.rules = rules;
    this.request = request;
  }

  @GET
  @Operation(summary = "Everything that waits, in short")
  public HomeView home() {
    return HomeView.of(desk.home(request.actor()));
  }

  @GET
  @Path("waiting")
  @Operation(summary = "What waits for a first look, oldest first")
  public Slice<ItemView> waiting(@RestQuery Integer page) {
    return desk.waiting(request.actor(), page).map(ItemView::of);
  }

  /** An item with what was said about it. */
  record Whole(ItemView item, List<DecisionView> decisions, List<NoteView> notes) {}

  @GET
  @Path("items/{kind}/{id}")
  @Operation(summary = "An item with its decisions and notes")
  public Whole item(@RestPath String kind, @RestPath UUID id) {
    return whole(ItemRef.of(kind, id));
  }

  @POST
  @Path("items/{kind}/{id}/decisions")
  @Operation(summary = "Decide about an item; never about one's own")
  public Response decide(@RestPath String kind, @RestPath UUID id, Decide sent) {
    ItemRef ref = ItemRef.of(kind, id);
    return request.did(
        sent,
        actor -> {
          decisions.decide(actor, ref, Action.read("/action", sent.action()), sent.reason());
          return whole(ref);
        });
  }

  private Whole whole(ItemRef ref) {
    return new Whole(
        ItemView.of(decisions.item(request.actor(), ref)),
        decisions.about(request.actor(), ref).stream().map(DecisionView::of).toList(),
        rules.on(request.actor(), ref).stream().map(NoteView::of).toList());
  }
}
