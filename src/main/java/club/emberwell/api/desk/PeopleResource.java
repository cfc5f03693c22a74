package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskJson.ItemView;
import club.emberwell.api.desk.DeskJson.PersonView;
import club.emberwell.api.desk.DeskRequests.Why;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.home.People;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Members as moderators see them: no mail addresses. */
@Path("/api/v1/desk/members")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class PeopleResource {
  private final People people;
  private final ApiRequest request;

  PeopleResource(People people, ApiRequest request) {
    this.people = people;
    this.request = request;
  }

  @GET
  @Operation(
      operationId = "listDeskMembers",
      summary = "Members whose name begins with some letters")
  public ListJson<PersonView> find(@RestQuery String q, @BeanParam ListQuery list) {
    return ListJson.of(people.find(request.actor(), q, list.part()), PersonView::of);
  }

  @GET
  @Path("{id}")
  @Operation(operationId = "getDeskMember", summary = "One member")
  public PersonView one(@RestPath UUID id) {
    return PersonView.of(people.one(request.actor(), id));
  }

  @GET
  @Path("{id}/entries")
  @Operation(operationId = "listEntriesOfMember", summary = "A member's entries in whatever state")
  public ListJson<ItemView> entries(@RestPath UUID id, @BeanParam ListQuery list) {
    return ListJson.of(people.entries(request.actor(), id, list.part()), ItemView::of);
  }

  @Keyed
  @POST
  @Path("{id}/ban")
  @Operation(operationId = "banMember", summary = "Shut a member out; sessions and tokens end")
  @APIResponse(responseCode = "204")
  public Response ban(@RestPath UUID id, Why sent) {
    return request.done(sent, actor -> people.ban(actor, id, sent.reason()));
  }

  @Keyed
  @POST
  @Path("{id}/unban")
  @Operation(operationId = "unbanMember", summary = "Let a member in again")
  @APIResponse(responseCode = "204")
  public Response unban(@RestPath UUID id, Why sent) {
    return request.done(sent, actor -> people.unban(actor, id, sent.reason()));
  }

  @PUT
  @Consumes(MediaType.WILDCARD)
  @Path("{id}/trust")
  @Operation(operationId = "trustMember", summary = "Spare a member the first look")
  public void trust(@RestPath UUID id) {
    people.trust(request.actor(), id, true);
  }

  @DELETE
  @Path("{id}/trust")
  @Operation(operationId = "distrustMember", summary = "Look at a member's first entries after all")
  public void distrust(@RestPath UUID id) {
    people.trust(request.actor(), id, false);
  }
}
