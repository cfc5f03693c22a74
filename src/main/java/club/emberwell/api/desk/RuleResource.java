package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskJson.NoteView;
import club.emberwell.api.desk.DeskJson.RuleView;
import club.emberwell.api.desk.DeskRequests.SetRule;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.desk.rule.Rule;
import club.emberwell.desk.rule.Rules;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** How rules are set and what they noticed. */
@Path("/api/v1/desk/rules")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class RuleResource {
  private final Rules rules;
  private final ApiRequest request;

  RuleResource(Rules rules, ApiRequest request) {
    this.rules = rules;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listRules", summary = "All rules")
  public ListJson<RuleView> all() {
    return ListJson.of(rules.all(request.actor()).stream().map(RuleView::of).toList());
  }

  @WithEtag
  @GET
  @Path("{code}")
  @Operation(operationId = "getRule", summary = "One rule")
  @APIResponseSchema(RuleView.class)
  public Response one(@RestPath String code) {
    return answer(rules.one(request.actor(), code));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{code}")
  @Operation(operationId = "setRule", summary = "Set a rule; needs If-Match")
  @APIResponseSchema(RuleView.class)
  public Response set(@RestPath String code, SetRule sent) {
    int version = request.version();
    return answer(
        rules.set(request.actor(), code, sent.mode(), sent.threshold(), sent.minutes(), version));
  }

  @GET
  @Path("{code}/notes")
  @Operation(operationId = "listNotesOfRule", summary = "Everything a rule noticed, newest first")
  public ListJson<NoteView> log(@RestPath String code, @BeanParam ListQuery list) {
    return ListJson.of(rules.log(request.actor(), code, list.part()), NoteView::of);
  }

  private static Response answer(Rule rule) {
    return ApiRequest.answer(Response.ok(), rule.version(), RuleView.of(rule));
  }
}
