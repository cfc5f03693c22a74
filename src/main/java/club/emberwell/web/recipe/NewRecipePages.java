package club.emberwell.web.recipe;

import club.emberwell.bench.Machines;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.recipe.CameFrom;
import club.emberwell.recipe.Folders;
import club.emberwell.recipe.RecipePosting;
import club.emberwell.recipe.Recipes;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.FormPage;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
import club.emberwell.web.recipe.NewRecipe.Known;
import club.emberwell.web.report.PostEntry;
import club.emberwell.web.report.PostEntry.Kind;
import club.emberwell.web.report.PostEntry.Purpose;
import club.emberwell.web.report.UnitFields;
import club.emberwell.web.report.Words;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** The form for a recipe: a new one, filled with what was found elsewhere, or one that changes. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class NewRecipePages extends Pages {
  private static final String NEW = "/recipes/new";
  private static final String EDIT = "/edit";

  private final Recipes recipes;
  private final Folders folders;
  private final NewRecipe known;
  private final RecipeWriting writing;
  private final Machines machines;
  private final Words words;
  private final JobFields job;

  NewRecipePages(
      Recipes recipes,
      Folders folders,
      NewRecipe known,
      RecipeWriting writing,
      Machines machines,
      Words words,
      JobFields job) {
    this.recipes = recipes;
    this.folders = folders;
    this.known = known;
    this.writing = writing;
    this.machines = machines;
    this.words = words;
    this.job = job;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance write(Writing writing);
  }

  /**
   * The form in one state.
   *
   * @param from carried along unseen; null for a recipe that is there
   * @param story where its settings came from, or null
   * @param back where Cancel leads
   */
  record Writing(
      PostEntry entry,
      CameFrom from,
      RecipeView.Link story,
      List<Folders.Folder> folders,
      String back) {
    /** What has something in it, or something to correct, stands open. */
    public boolean isJobOpen() {
      return JobFields.isUsed(entry.form());
    }
  }

  /**
   * @param uri names a report and which of its tests, a grid, a recipe and its revision, or fields
   *     with what stands in them
   */
  @GET
  @Path("recipes/new")
  public Response blank(
      @Context UriInfo uri,
      @RestQuery String report,
      @RestQuery Integer trial,
      @RestQuery String grid,
      @RestQuery String recipe,
      @RestQuery Integer version) {
    Actor actor = actor();
    UUID ofReport = SentForm.readId(report);
    UUID ofGrid = SentForm.readId(grid);
    UUID ofRecipe = SentForm.readId(recipe);
    if (ofReport != null) {
      return filled(known.report(actor, ofReport, trial == null ? 0 : trial));
    }
    if (ofRecipe != null) {
      return filled(known.recipe(actor, ofRecipe, version == null ? 0 : version));
    }
    if (ofGrid != null) {
      Optional<Known> best = known.best(actor, ofGrid);
      return best.map(this::filled)
          .orElseGet(
              () ->
                  to(
                      known
                          .results(actor, ofGrid)
                          .map(id -> "/reports/" + id + "#add-test")
                          .orElse("/grids/" + ofGrid)));
    }
    Map<String, String> given = new LinkedHashMap<>();
    uri.getQueryParameters().forEach((name, values) -> given.put(name, values.get(0)));
    return filled(NewRecipe.named(given));
  }

  private Response filled(Known with) {
    Form form = UnitFields.part(fresh().fill(with.values()));
    return Response.ok(shown(form, with.from())).build();
  }

  private Form fresh() {
    return RecipeForm.fresh(actor(), machines.of(actor()), job);
  }

  private TemplateInstance shown(Form form, CameFrom from) {
    return page(new Purpose("Add to my bench", NEW, Kind.FIRST), form, from, "/recipes");
  }

  private TemplateInstance page(Purpose purpose, Form form, CameFrom from, String back) {
    Actor actor = actor();
    return Templates.write(
        new Writing(
            new PostEntry(purpose, UnitFields.follow(form), words.lists(), machines.of(actor)),
            from,
            RecipeViews.from(from),
            folders.of(actor),
            back));
  }

  @POST
  @Path("recipes/new")
  public Response add(SentForm sent) {
    CameFrom from = RecipeForm.from(sent);
    return take(sent, this::fresh, form -> shown(form, from))
        .store(s -> recipes.add(actor(), writing.read(actor(), s, s.id("id"))).recipe())
        .then(recipe -> RecipePages.path(recipe.id()) + "?done=added");
  }

  @GET
  @Path("recipes/{id}/edit")
  public TemplateInstance edit(@RestPath UUID id) {
    return editing(id, UnitFields.part(stored(id)));
  }

  private Form stored(UUID id) {
    return RecipeForm.changing(actor(), machines.of(actor()), job, recipes.get(actor(), id));
  }

  private TemplateInstance editing(UUID id, Form form) {
    String path = RecipePages.path(id);
    return page(new Purpose("Edit a recipe", path + EDIT, Kind.EDIT), form, null, path);
  }

  @POST
  @Path("recipes/{id}/edit")
  public Response edit(@RestPath UUID id, SentForm sent) {
    FormPage form = take(sent, () -> UnitFields.part(stored(id)), again -> editing(id, again));
    return form.store(
            s -> {
              RecipePosting posting = writing.read(actor(), s, null);
              return recipes.revise(actor(), id, s.version(), posting, RecipeForm.reason(s));
            })
        .then(RecipePages.path(id) + "?done=changed");
  }
}
