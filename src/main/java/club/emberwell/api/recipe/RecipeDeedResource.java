package club.emberwell.api.recipe;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ReportJson;
import club.emberwell.api.view.ReportViews;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.member.Role;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.RecipeReports;
import club.emberwell.recipe.Recipes;
import club.emberwell.recipe.Revisions;
import club.emberwell.report.ReportService;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.WrittenTrial;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** What is done with one of one's own recipes. */
@Path(RecipeResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Recipes")
public class RecipeDeedResource {
  private final Recipes recipes;
  private final Revisions revisions;
  private final RecipeReports published;
  private final ReportService reports;
  private final RecipeViews views;
  private final ReportViews reportViews;
  private final ApiRequest request;

  RecipeDeedResource(
      Recipes recipes,
      Revisions revisions,
      RecipeReports published,
      ReportService reports,
      RecipeViews views,
      ReportViews reportViews,
      ApiRequest request) {
    this.recipes = recipes;
    this.revisions = revisions;
    this.published = published;
    this.reports = reports;
    this.views = views;
    this.reportViews = reportViews;
    this.request = request;
  }

  /**
   * What is brought back.
   *
   * @param revision its version
   */
  @Schema(name = "RecipeRestoration")
  record Restoration(Integer revision, String reason) {}

  /**
   * How a recipe came out.
   *
   * @param id of the report, made by the client, or left out
   * @param quality from 1 to 5, only where it was right
   * @param notes for everybody; those of the recipe stay with its owner
   */
  @Schema(name = "RecipeReportRequest")
  record ReportOf(UUID id, String effect, Integer quality, List<String> defects, String notes) {
    WrittenTrial judged() {
      return new WrittenTrial(null, null, null, effect, quality, defects);
    }
  }

  /**
   * A report that was posted with a recipe.
   *
   * @param version of the recipe then
   */
  @Schema(name = "RecipeReport")
  record Posted(UUID report, int version, Instant at) {
    static Posted of(RecipeReports.Posted posted) {
      return new Posted(posted.report(), posted.version(), posted.at());
    }
  }

  @IfMatch
  @Keyed
  @WithEtag
  @POST
  @Path("{id}/restorations")
  @Fails(ProblemKind.PROHIBITED_WORK)
  @Operation(
      operationId = "restoreRecipe",
      summary = "Make an earlier revision the newest again",
      description =
          "A revision of its own with its reason. The recipe stays in its folder. Needs If-Match"
              + " and an Idempotency-Key.")
  @APIResponseSchema(value = RecipeJson.class, responseCode = "200")
  public Response restore(@PathParam("id") UUID id, Restoration sent) {
    return request.once(
        sent,
        () ->
            answer(
                revisions.restore(
                    request.actor(), id, request.version(), sent.revision(), sent.reason())));
  }

  @Keyed
  @WithEtag
  @POST
  @Path("{id}/uses")
  @Consumes(MediaType.WILDCARD)
  @Operation(
      operationId = "useRecipe",
      summary = "I used it now",
      description = "Moves it to the top of what was used last. Needs an Idempotency-Key.")
  @APIResponseSchema(value = RecipeJson.class, responseCode = "200")
  public Response use(@PathParam("id") UUID id) {
    return request.once("", () -> answer(recipes.use(request.actor(), id)));
  }

  private Response answer(Recipe recipe) {
    return ApiRequest.answer(Response.ok(), recipe.version(), views.whole(recipe));
  }

  @Keyed
  @WithEtag
  @POST
  @Path("{id}/reports")
  @Fails(ProblemKind.PROHIBITED_WORK)
  @Operation(
      operationId = "publishRecipe",
      summary = "Post how a recipe came out",
      description =
          "A report for everybody with the machine, the work and the settings of the recipe. Needs"
              + " an Idempotency-Key.")
  @APIResponseSchema(value = ReportJson.class, responseCode = "201")
  public Response publish(@PathParam("id") UUID id, ReportOf sent) {
    return request.once(
        sent,
        () -> {
          StoredReport report =
              published.post(request.actor(), id, sent.id(), sent.judged(), sent.notes());
          UUID made = report.snapshot().id();
          return ApiRequest.answer(
              Response.created(URI.create(ReportViews.path(made))),
              report.snapshot().version(),
              reportViews.whole(report, reports.triedByOthers(made)));
        });
  }

  @GET
  @Path("{id}/reports")
  @Operation(
      operationId = "listRecipeReports",
      summary = "The reports posted with a recipe, newest first")
  public ListJson<Posted> reports(@PathParam("id") UUID id) {
    return ListJson.of(published.of(request.actor(), id).stream().map(Posted::of).toList());
  }
}
