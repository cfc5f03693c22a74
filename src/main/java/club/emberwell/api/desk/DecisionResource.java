package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskJson.DecisionView;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.desk.home.Desk;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What moderators and rules decided about a member's own entries. */
@Path("/api/v1/decisions")
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Flags")
public class DecisionResource {
  private final Desk desk;
  private final ApiRequest request;

  DecisionResource(Desk desk, ApiRequest request) {
    this.desk = desk;
    this.request = request;
  }

  @GET
  @Operation(
      operationId = "listMyDecisions",
      summary = "What was decided about one's own entries, newest first")
  public ListJson<DecisionView> mine(@BeanParam ListQuery list) {
    return ListJson.of(desk.told(request.actor(), list.part()), DecisionView::of);
  }
}
