package club.emberwell.api.card;

import club.emberwell.access.AtAnyPace;
import club.emberwell.access.CurrentActor;
import club.emberwell.access.PublicUrl;
import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ReportViews;
import club.emberwell.card.CardLinks;
import club.emberwell.card.CardLinks.Link;
import club.emberwell.card.JobCards;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Job cards of one's own recipes, and the links to them. */
@Path(CardResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Recipes")
public class CardResource {
  static final String PATH = "/api/v1/recipes";

  private final JobCards cards;
  private final CardLinks links;
  private final ReportViews words;
  private final CurrentActor actor;
  private final PublicUrl url;

  CardResource(
      JobCards cards, CardLinks links, ReportViews words, CurrentActor actor, PublicUrl url) {
    this.cards = cards;
    this.links = links;
    this.words = words;
    this.actor = actor;
    this.url = url;
  }

  /**
   * A link as the recipe's owner sees it.
   *
   * @param version the recipe's newest when it was made; it shows none before
   * @param openedAt last, by whomever; left out where never
   * @param endedAt left out while it works
   */
  @Schema(name = "JobCardLink")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record LinkJson(
      UUID id,
      int version,
      Instant createdAt,
      @Nullable Instant openedAt,
      @Nullable Instant endedAt,
      boolean works) {
    static LinkJson of(Link link) {
      return new LinkJson(
          link.id(),
          link.version(),
          link.createdAt(),
          link.openedAt(),
          link.endedAt(),
          link.works());
    }
  }

  /** A fresh link, to hand on. */
  @Schema(name = "NewJobCardLink")
  record Made(UUID id, String url, int version, Instant createdAt) {}

  @GET
  @Path("{id}/card")
  @Operation(
      operationId = "getJobCard",
      summary = "The job card of a recipe",
      description =
          "Of the newest revision, or of the one that revision= names. Machine, glasses, fixture"
              + " and room are as they are now. Eyes: a calculated minimum; ask a laser safety"
              + " officer; local rules decide.")
  public CardJson own(@PathParam("id") UUID id, @QueryParam("revision") Integer revision) {
    return CardJson.of(cards.of(actor.get(), id, revision, NumberStyle.ANY), words);
  }

  @GET
  @Path("{id}/links")
  @Operation(
      operationId = "listJobCardLinks",
      summary = "The links to the job card of a recipe, the newest first",
      description = "Those that were ended too. What a link is called is kept nowhere.")
  public ListJson<LinkJson> links(@PathParam("id") UUID id) {
    return ListJson.of(links.of(actor.get(), id).stream().map(LinkJson::of).toList());
  }

  @POST
  @Path("{id}/links")
  @Fails(ProblemKind.INVALID_FIELDS)
  @Operation(
      operationId = "makeJobCardLink",
      summary = "Make a link to the job card of a recipe",
      description =
          "Whoever has it reads the card without an account until it is ended. The link is shown"
              + " this once. Takes no Idempotency-Key: a secret is never kept.")
  @APIResponseSchema(value = Made.class, responseCode = "201")
  public Response make(@PathParam("id") UUID id) {
    CardLinks.Fresh fresh = links.make(actor.get(), id);
    Link link = fresh.link();
    return Response.created(URI.create("%s/%s/links/%s".formatted(PATH, id, link.id())))
        .header("Cache-Control", "no-store")
        .entity(new Made(link.id(), url.of(fresh.path()), link.version(), link.createdAt()))
        .build();
  }

  @AtAnyPace
  @DELETE
  @Path("{id}/links/{link}")
  @Operation(
      operationId = "endJobCardLink",
      summary = "End a link to the job card of a recipe",
      description = "For good. A second time does nothing.")
  public void end(@PathParam("id") UUID id, @PathParam("link") UUID link) {
    links.end(actor.get(), id, link);
  }
}
