package club.emberwell.api.desk;

import club.emberwell.access.Etags;
import club.emberwell.api.desk.DeskRequests.EditTerm;
import club.emberwell.api.desk.DeskRequests.Merge;
import club.emberwell.api.desk.DeskRequests.NewTerm;
import club.emberwell.api.desk.DeskRequests.Spelling;
import club.emberwell.api.desk.DeskRequests.Why;
import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.desk.MergeEffects;
import club.emberwell.desk.MergeEffects.Effects;
import club.emberwell.desk.VocabularyCare;
import club.emberwell.desk.VocabularyCare.Change;
import club.emberwell.member.Role;
import io.vertx.ext.web.RoutingContext;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
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
  private final DeskAnswers answers;
  private final RoutingContext request;

  TermResource(
      VocabularyCare care, MergeEffects effects, DeskAnswers answers, RoutingContext request) {
    this.care = care;
    this.effects = effects;
    this.answers = answers;
    this.request = request;
  }

  @POST
  @Operation(summary = "Add a term; word: a waiting word to file to it")
  public Response add(@RestPath String kind, @RestQuery UUID word, NewTerm sent) {
    TermKind list = DeskRequests.kind(kind);
    return answers.once(
        sent, actor -> care.add(actor, list, sent.slug(), sent.draft(), word, sent.reason()));
  }

  @GET
  @Path("{slug}")
  @Operation(summary = "A term, merged or not")
  public Response one(@RestPath String kind, @RestPath String slug) {
    Term term = care.term(answers.actor(), DeskRequests.kind(kind), slug);
    return Response.ok(term).header(HttpHeaders.ETAG, Etags.of(term.version())).build();
  }

  @PUT
  @Path("{slug}")
  @Operation(summary = "Change a term; needs If-Match")
  public Response edit(@RestPath String kind, @RestPath String slug, EditTerm sent) {
    int version = Math.toIntExact(Math.min(Etags.required(request), Integer.MAX_VALUE));
    care.edit(answers.actor(), DeskRequests.kind(kind), slug, version, sent.draft(), sent.reason());
    return one(kind, slug);
  }

  @GET
  @Path("{slug}/history")
  @Operation(summary = "What happened to a term, newest first")
  public List<Change> history(
      @RestPath String kind, @RestPath String slug, @RestQuery Integer page) {
    return care.termHistory(answers.actor(), DeskRequests.kind(kind), slug, page);
  }

  @POST
  @Path("{slug}/spellings")
  @Operation(summary = "Add a spelling")
  public Response spell(@RestPath String kind, @RestPath String slug, Spelling sent) {
    TermKind list = DeskRequests.kind(kind);
    boolean ambiguous = Boolean.TRUE.equals(sent.ambiguous());
    return answers.once(
        sent,
        actor ->
            care.addSpelling(
                actor,
                list,
                slug,
                DeskAnswers.needed("/text", sent.text()),
                ambiguous,
                sent.reason()));
  }

  @POST
  @Path("{slug}/spellings/removal")
  @Operation(summary = "Take a spelling back")
  public Response unspell(@RestPath String kind, @RestPath String slug, Spelling sent) {
    TermKind list = DeskRequests.kind(kind);
    return answers.once(
        sent,
        actor ->
            care.removeSpelling(
                actor, list, slug, DeskAnswers.needed("/text", sent.text()), sent.reason()));
  }

  @GET
  @Path("{slug}/merge")
  @Operation(summary = "What a merge into another term would move")
  public Effects preview(@RestPath String kind, @RestPath String slug, @RestQuery String into) {
    return effects.of(
        answers.actor(), DeskRequests.kind(kind), slug, DeskAnswers.needed("/into", into));
  }

  @POST
  @Path("{slug}/merge")
  @Operation(summary = "Merge a term into another one")
  public Response merge(@RestPath String kind, @RestPath String slug, Merge sent) {
    TermKind list = DeskRequests.kind(kind);
    return answers.once(
        sent,
        actor ->
            care.merge(actor, list, slug, DeskAnswers.needed("/into", sent.into()), sent.reason()));
  }

  @POST
  @Path("{slug}/merge/undo")
  @Operation(summary = "Make a merged term what it was")
  public Response undo(@RestPath String kind, @RestPath String slug, Why sent) {
    TermKind list = DeskRequests.kind(kind);
    return answers.once(sent, actor -> care.undoMerge(actor, list, slug, sent.reason()));
  }
}
