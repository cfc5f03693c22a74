package club.emberwell.api.desk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.desk.DeskJson.NoteView;
import club.emberwell.api.desk.DeskRequests.Nothing;
import club.emberwell.api.desk.UndoJson.RunView;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.view.MemberJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.desk.rule.NoteGroup;
import club.emberwell.desk.rule.RuleCode;
import club.emberwell.desk.rule.Rules;
import club.emberwell.desk.undo.NoteDecisions;
import club.emberwell.desk.undo.NoteDecisions.Group;
import club.emberwell.entry.Decision;
import club.emberwell.member.Role;
import club.emberwell.remark.Coded;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;

/** What rules noticed and nobody has looked at yet. */
@Path("/api/v1/desk/notes")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class NoteResource {
  private final Rules rules;
  private final NoteDecisions decisions;
  private final ApiRequest request;

  NoteResource(Rules rules, NoteDecisions decisions, ApiRequest request) {
    this.rules = rules;
    this.decisions = decisions;
    this.request = request;
  }

  @GET
  @Operation(operationId = "listRuleNotes", summary = "Open notes, newest first")
  public ListJson<NoteView> open(@BeanParam ListQuery list) {
    return ListJson.of(rules.open(request.actor(), list.part()), NoteView::of);
  }

  /**
   * What one rule noticed of one member's entries.
   *
   * @param count how many entries
   */
  @Schema(name = "RuleNoteGroup")
  record GroupView(RuleCode rule, MemberJson member, long count, Instant createdAt) {
    static GroupView of(NoteGroup g) {
      return new GroupView(
          g.rule(), MemberJson.of(g.author().id(), g.author().handle()), g.count(), g.since());
    }
  }

  /**
   * A decision about all of a group.
   *
   * @param id made by the client; the same one twice is one decision
   * @param action what happens to the entries, or null
   */
  @Schema(
      name = "NoteDecisionRequest",
      requiredProperties = {"id", "rule", "member"})
  record Decide(
      UUID id,
      @Schema(implementation = RuleCode.class) String rule,
      UUID member,
      @Schema(implementation = Decision.class) String action,
      String reason) {
    Group group() {
      RuleCode code =
          Coded.of(RuleCode.class, rule)
              .orElseThrow(
                  () -> new EntryRefused(RemarkId.CHOICE_UNKNOWN, "/rule", "No such rule."));
      if (member == null) {
        throw new EntryRefused(RemarkId.REQUIRED, "/member", "Please fill in this field.");
      }
      return new Group(code, member);
    }

    Decision decision() {
      return action == null ? null : Decision.read("/action", action);
    }
  }

  @GET
  @Path("groups")
  @Operation(
      operationId = "listRuleNoteGroups",
      summary = "Open notes by rule and member, those with the newest notes first")
  public ListJson<GroupView> groups(@BeanParam ListQuery list) {
    return ListJson.of(rules.groups(request.actor(), list.part()), GroupView::of);
  }

  @Keyed
  @Fails(ProblemKind.NOT_FOUND)
  @POST
  @Path("decisions")
  @Operation(
      operationId = "decideRuleNotes",
      summary = "Decide about all that a rule noticed of a member's entries",
      description =
          "Its steps are an undo of their own: restoreUndo takes all of them back. Without an action"
              + " the entries stay as they are.")
  @APIResponseSchema(RunView.class)
  public Response decide(Decide sent) {
    return request.did(
        sent,
        actor ->
            RunView.of(
                decisions.decide(actor, sent.id(), sent.group(), sent.decision(), sent.reason())));
  }

  @Keyed
  @POST
  @Path("{id}/seen")
  @Operation(operationId = "markRuleNoteSeen", summary = "Lay a note aside")
  @APIResponse(responseCode = "204")
  public Response seen(@RestPath long id, Nothing sent) {
    return request.done(sent, actor -> rules.seen(actor, id));
  }
}
