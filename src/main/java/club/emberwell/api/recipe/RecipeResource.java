package club.emberwell.api.recipe;

import club.emberwell.access.problem.ProblemKind;
import club.emberwell.api.contract.Fails;
import club.emberwell.api.view.ListJson;
import club.emberwell.api.view.ListQuery;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.IfMatch;
import club.emberwell.api.writes.Keyed;
import club.emberwell.api.writes.WithEtag;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.member.Role;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.RecipePosting;
import club.emberwell.recipe.RecipeQuery;
import club.emberwell.recipe.Recipes;
import club.emberwell.recipe.Revisions;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** One's own recipes; nobody else's can be seen. */
@Path(RecipeResource.PATH)
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Recipes")
public class RecipeResource {
  static final String PATH = "/api/v1/recipes";

  private final Recipes recipes;
  private final Revisions revisions;
  private final CatalogService catalog;
  private final RecipeViews views;
  private final ApiRequest request;

  RecipeResource(
      Recipes recipes,
      Revisions revisions,
      RecipeViews views,
      CatalogService catalog,
      ApiRequest request) {
    this.recipes = recipes;
    this.revisions = revisions;
    this.catalog = catalog;
    this.views = views;
    this.request = request;
  }

  @GET
  @Fails(ProblemKind.INVALID_FIELDS)
  @Operation(
      operationId = "listRecipes",
      summary = "My recipes",
      description =
          "With q= those that hold every word in their name, folder, work, notes or in what their"
              + " machine is called; with folder= those in it. sort= used (the last used first,"
              + " as without it), newest or name.")
  public ListJson<RecipeJson> list(
      @QueryParam("q") String text,
      @QueryParam("folder") String folder,
      @QueryParam("sort") String sort,
      @BeanParam ListQuery list) {
    RecipeQuery query = RecipeQuery.read(text, folder, sort);
    return ListJson.of(recipes.mine(request.actor(), query, list.part()), views::among);
  }

  @Keyed
  @WithEtag
  @POST
  @Operation(
      operationId = "addRecipe",
      summary = "Keep a recipe",
      description =
          "Its settings are read as those of a report. Implausible values are stored and answered"
              + " as warnings; a prohibited material takes no recipe. Only its owner sees it. Needs"
              + " an Idempotency-Key.")
  @APIResponseSchema(value = RecipeJson.class, responseCode = "201")
  public Response add(RecipeRequest sent) {
    return request.once(
        sent,
        () -> {
          RecipePosting posting = RecipePosting.ofApi(sent.id(), sent.written());
          Recipe recipe = recipes.add(request.actor(), posting).recipe();
          return answer(Response.created(URI.create(PATH + "/" + recipe.id())), recipe);
        });
  }

  @WithEtag
  @GET
  @Path("{id}")
  @Operation(operationId = "getRecipe", summary = "One of my recipes")
  @APIResponseSchema(value = RecipeJson.class, responseCode = "200")
  public Response get(@PathParam("id") UUID id) {
    return answer(Response.ok(), recipes.get(request.actor(), id));
  }

  @IfMatch
  @WithEtag
  @PUT
  @Path("{id}")
  @Operation(
      operationId = "reviseRecipe",
      summary = "Write a recipe anew",
      description =
          "Another revision with its reason; the earlier ones stay. cameFrom stays as it was. Needs"
              + " If-Match.")
  @APIResponseSchema(value = RecipeJson.class, responseCode = "200")
  public Response revise(@PathParam("id") UUID id, RecipeRequest sent) {
    RecipePosting posting = RecipePosting.ofApi(null, sent.written());
    return answer(
        Response.ok(),
        recipes.revise(request.actor(), id, request.version(), posting, sent.reason()));
  }

  @IfMatch(required = false)
  @DELETE
  @Path("{id}")
  @Operation(
      operationId = "withdrawRecipe",
      summary = "Remove a recipe",
      description = "It stays in the history. Heeds If-Match.")
  public void withdraw(@PathParam("id") UUID id) {
    recipes.withdraw(request.actor(), id, request.versionIfGiven());
  }

  @GET
  @Path("{id}/revisions")
  @Operation(
      operationId = "listRecipeRevisions",
      summary = "Every revision of a recipe, newest first")
  public ListJson<RevisionJson> revisions(@PathParam("id") UUID id) {
    return ListJson.of(RevisionJson.all(revisions.of(request.actor(), id), catalog.cautions()));
  }

  private Response answer(Response.ResponseBuilder response, Recipe recipe) {
    return ApiRequest.answer(response, recipe.version(), views.whole(recipe));
  }
}
