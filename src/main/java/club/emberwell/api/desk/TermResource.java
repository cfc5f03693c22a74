package club.emberwell.api.desk;

import club.emberwell.api.desk.DeskRequests.EditTerm;
import club.emberwell.api.desk.DeskRequests.Merge;
import club.emberwell.api.desk.DeskRequests.NewTerm;
import club.emberwell.api.desk.DeskRequests.Spelling;
import club.emberwell.api.desk.DeskRequests.Why;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.desk.word.MergeEffects;
import club.emberwell.desk.word.MergeEffects.Effects;
import club.emberwell.desk.word.VocabularyCare;
import club.emberwell.desk.word.VocabularyCare.Change;
import club.emberwell.listing.Slice;
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

  @POST
  @Operation(summary = "Add a term; word: a waiting word to file to it")
  public Response add(@RestPath String kind, @RestQuery UUID word, NewTerm sent) {
    TermKind list = DeskRequests.kind(kind);
    return request.did(
        sent, actor -> care.add(actor, list, sent.slug(), sent.draft(), word, sent.reason()));
  }

  @GET
  @Path("{slug}")
  @Operation(summary = "A term, merged or not")
  public Response one(@RestPath String kind, @RestPath String slug) {
    Term term = care.term(request.actor(), DeskRequests.kind(kind), slug);
    return ApiRequest.answer(Response.ok(), term.version(), term);
  }

  @PUT
  @Path("{slug}")
  @Operation(summary = "Change a term; needs If-Match")
  public Response edit(@RestPath String kind, @RestPath String slug, EditTerm sent) {
    int version = request.version();
    care.edit(request.actor(), DeskRequests.kind(kind), slug, version, sent.draft(), sent.reason());
    return one(kind, slug);
  }

  @GET
  @Path("{slug}/history")
  @Operation(summary = "What happened to a term, newest first")
  public Slice<Change> history(
      @RestPath String kind, @RestPath String slug, @BeanParam ListQuery list) {
    return care.termHistory(request.actor(), DeskRequests.kind(kind), slug, list.part());
  }

  @POST
  @Path("{slug}/spellings")
  @Operation(summary = "Add a spelling")
  public Response spell(@RestPath String kind, @RestPath String slug, Spelling sent) {
    TermKind list = DeskRequests.kind(kind);
    boolean ambiguous = Boolean.TRUE.equals(sent.ambiguous());
    return request.did(
        sent,
        actor ->
            care.addSpelling(
                actor,
                list,
                slug,
                ApiRequest.needed("/text", sent.text()),
                ambiguous,
                sent.reason()));
  }

  @POST
  @Path("{slug}/spellings/removal")
  @Operation(summary = "Take a spelling back")
  public Response unspell(@RestPath String kind, @RestPath String slug, Spelling sent) {
    TermKind list = DeskRequests.kind(kind);
    return request.did(
        sent,
        actor ->
            care.removeSpelling(
                actor, list, slug, ApiRequest.needed("/text", sent.text()), sent.reason()));
  }

  @GET
  @Path("{slug}/merge")
  @Operation(summary = "What a merge into another term would move")
  public Effects preview(@RestPath String kind, @RestPath String slug, @RestQuery String into) {
    return effects.of(
        request.actor(), DeskRequests.kind(kind), slug, ApiRequest.needed("/into", into));
  }

  @POST
  @Path("{slug}/merge")
  @Operation(summary = "Merge a term into another one")
  public Response merge(@RestPath String kind, @RestPath String slug, Merge sent) {
    TermKind list = DeskRequests.kind(kind);
    return request.did(
        sent,
        actor ->
            care.merge(actor, list, slug, ApiRequest.needed("/into", sent.into()), sent.reason()));
  }

  @POST
  @Path("{slug}/merge/undo")
  @Operation(summary = "Make a merged term what it was")
  public Response undo(@RestPath String kind, @RestPath String slug, Why sent) {
    TermKind list = DeskRequests.kind(kind);
    return request.did(sent, actor -> care.undoMerge(actor, list, slug, sent.reason()));
  }
}
