package club.emberwell.api.desk;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.desk.DeskRequests.EditTerm;
import club.emberwell.api.desk.DeskRequests.Merge;
import club.emberwell.api.desk.DeskRequests.NewTerm;
import club.emberwell.api.desk.DeskRequests.Spelling;
import club.emberwell.api.desk.DeskRequests.Why;
import club.emberwell.api.desk.WordsJson.ChangeView;
import club.emberwell.api.desk.WordsJson.EffectsView;
import club.emberwell.api.desk.WordsJson.TermView;
import club.emberwell.api.desk.WordsJson.VersionView;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.desk.word.MergeEffects;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.member.Role;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** Care of the words of the club. */
@Path("/api/v1/desk/terms/{kind}")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.MODERATE)
@Tag(name = "Desk")
public class TermResource {
  private final VocabularyCare care;
  private final MergeEffects effects;
  private final ApiRequest request;

  TermResource(VocabularyCare care, MergeEffects effects, ApiRequest request) {
    this.care = care;
    this.effects = effects;
    this.request = request;
  }

  @Keyed
  @POST
  @Operation(operationId = "addTerm", summary = "Add a term; word: a waiting word to file to it")
  @APIResponseSchema(ChangeView.class)
  public Response add(@RestPath String kind, @RestQuery UUID word, NewTerm sent) {
    TermKind list = DeskRequests.kind(kind);
    return request.did(
        sent,
        actor ->
            ChangeView.of(care.add(actor, list, sent.value(), sent.draft(), word, sent.reason())));
  }

  @WithEtag
  @GET
  @Path("{value}")
  @Operation(operationId = "getTerm", summary = "A term, merged or not")
  @APIResponseSchema(TermView.class)
  public Response one(@RestPath String kind, @RestPath String value) {
    Term term = care.term(request.actor(), DeskRequests.kind(kind), value);
    return ApiRequest.answer(Response.ok(), term.version(), TermView.of(term));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{value}")
  @Operation(operationId = "editTerm", summary = "Change a term; needs If-Match")
  @APIResponseSchema(TermView.class)
  public Response edit(@RestPath String kind, @RestPath String value, EditTerm sent) {
    int version = request.version();
    care.edit(
        request.actor(), DeskRequests.kind(kind), value, version, sent.draft(), sent.reason());
    return one(kind, value);
  }

  @GET
  @Path("{value}/history")
  @Operation(operationId = "listTermVersions", summary = "What happened to a term, newest first")
  public ListJson<VersionView> history(
      @RestPath String kind, @RestPath String value, @BeanParam ListQuery list) {
    return ListJson.of(
        care.termHistory(request.actor(), DeskRequests.kind(kind), value, list.part()),
        VersionView::of);
  }

  @Keyed
  @POST
  @Path("{value}/spellings")
  @Operation(operationId = "addSpelling", summary = "Add a spelling")
  @APIResponseSchema(ChangeView.class)
  public Response spell(@RestPath String kind, @RestPath String value, Spelling sent) {
    TermKind list = DeskRequests.kind(kind);
    boolean ambiguous = Boolean.TRUE.equals(sent.ambiguous());
    return request.did(
        sent,
        actor ->
            ChangeView.of(
                care.addSpelling(
                    actor,
                    list,
                    value,
                    ApiRequest.needed("/text", sent.text()),
                    ambiguous,
                    sent.reason())));
  }

  @Keyed
  @POST
  @Path("{value}/spellings/removal")
  @Operation(operationId = "removeSpelling", summary = "Take a spelling back")
  @APIResponseSchema(ChangeView.class)
  public Response unspell(@RestPath String kind, @RestPath String value, Spelling sent) {
    TermKind list = DeskRequests.kind(kind);
    return request.did(
        sent,
        actor ->
            ChangeView.of(
                care.removeSpelling(
                    actor, list, value, ApiRequest.needed("/text", sent.text()), sent.reason())));
  }

  @GET
  @Path("{value}/merge")
  @Fails(ProblemKind.INVALID_FIELDS)
  @Operation(operationId = "previewMerge", summary = "What a merge into another term would move")
  public EffectsView preview(
      @RestPath String kind, @RestPath String value, @RestQuery String into) {
    return EffectsView.of(
        effects.of(
            request.actor(), DeskRequests.kind(kind), value, ApiRequest.needed("/into", into)));
  }

  @Keyed
  @POST
  @Path("{value}/merge")
  @Operation(operationId = "mergeTerm", summary = "Merge a term into another one")
  @APIResponseSchema(ChangeView.class)
  public Response merge(@RestPath String kind, @RestPath String value, Merge sent) {
    TermKind list = DeskRequests.kind(kind);
    return request.did(
        sent,
        actor ->
            ChangeView.of(
                care.merge(
                    actor, list, value, ApiRequest.needed("/into", sent.into()), sent.reason())));
  }

  @Keyed
  @POST
  @Path("{value}/merge/undo")
  @Operation(operationId = "undoMerge", summary = "Make a merged term what it was")
  @APIResponseSchema(ChangeView.class)
  public Response undo(@RestPath String kind, @RestPath String value, Why sent) {
    TermKind list = DeskRequests.kind(kind);
    return request.did(
        sent, actor -> ChangeView.of(care.undoMerge(actor, list, value, sent.reason())));
  }
}
