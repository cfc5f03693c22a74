package club.emberwell.web.recipe;

import club.emberwell.listing.Slice;
import club.emberwell.member.Actor;
import club.emberwell.member.Role;
import club.emberwell.recipe.Folders;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.RecipeLimits;
import club.emberwell.recipe.RecipeQuery;
import club.emberwell.recipe.RecipeReports;
import club.emberwell.recipe.RecipeSort;
import club.emberwell.recipe.Recipes;
import club.emberwell.remark.EntryRefused;
import club.emberwell.search.query.QueryString;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pager;
import club.emberwell.web.frame.Pages;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.StringJoiner;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;

/** My recipes: the list, one of them, and taking one away. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class RecipePages extends Pages {
  static final String LIST = "/recipes";
  private static final int UNPROCESSABLE = 422;
  private static final String FOLDER = "folder";

  private final Recipes recipes;
  private final RecipeReports reports;
  private final Folders folders;
  private final RecipeViews views;

  RecipePages(Recipes recipes, RecipeReports reports, Folders folders, RecipeViews views) {
    this.recipes = recipes;
    this.reports = reports;
    this.folders = folders;
    this.views = views;
  }

  static String path(UUID id) {
    return LIST + "/" + id;
  }

  /** Where the recipes of a folder stand. */
  static String shelf(String folder) {
    return address(null, folder, null);
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance recipes(Form search, Found found);

    static native TemplateInstance recipe(RecipeView recipe);

    static native TemplateInstance withdraw(Head recipe);
  }

  /**
   * What was found.
   *
   * @param asked whether words or a folder were asked for
   */
  record Found(boolean asked, List<RecipeCard> recipes, Pager pager, boolean filed) {}

  /** Which recipe it is. */
  record Head(UUID id, String name, int version) {}

  @GET
  @Path("recipes")
  public Response recipes(
      @RestQuery String q,
      @RestQuery String folder,
      @RestQuery String sort,
      @RestQuery("page") String number,
      @RestQuery String done) {
    say(done, "removed".equals(done) ? "Removed." : "Saved.");
    List<Folders.Folder> all = folders.of(actor());
    Form search = search(q, folder, sort, all);
    try {
      RecipeQuery query = RecipeQuery.read(q, folder, sort);
      Slice<Recipe> found = recipes.mine(actor(), query, Pager.part(number));
      boolean asked = !query.words().isEmpty() || query.folder() != null;
      return Response.ok(
              Templates.recipes(
                  search,
                  new Found(
                      asked,
                      views.cards(actor(), found.rows()),
                      Pager.of(found, address(q, folder, sort)),
                      !all.isEmpty())))
          .build();
    } catch (EntryRefused e) {
      page.fail();
      Found nothing = new Found(true, List.of(), new Pager(null, null), !all.isEmpty());
      return Response.status(UNPROCESSABLE)
          .entity(Templates.recipes(search.remarks(e.remarks()), nothing))
          .build();
    }
  }

  private static Form search(String q, String folder, String sort, List<Folders.Folder> folders) {
    Field lies =
        Field.of(FOLDER, "Folder")
            .choice("", "All")
            .choices(folders, Folders.Folder::name, f -> "%s (%d)".formatted(f.name(), f.recipes()))
            .value(folder);
    return new Form()
        .add(Field.of("q", "Name, material or notes").maxLength(RecipeLimits.SEARCH).value(q))
        .add(lies)
        .add(
            Field.of("sort", "Order")
                .choices(RecipeSort.values(), RecipeSort::label)
                .value(sort == null || sort.isBlank() ? RecipeSort.USED.code() : sort));
  }

  private static String address(String q, String folder, String sort) {
    StringJoiner address = new StringJoiner("&", LIST + "?", "");
    add(address, "q", q);
    add(address, FOLDER, folder);
    add(address, "sort", sort);
    return address.toString();
  }

  private static void add(StringJoiner address, String name, String value) {
    if (value != null && !value.isBlank()) {
      address.add(name + "=" + QueryString.encoded(value));
    }
  }

  @GET
  @Path("recipes/{id}")
  public TemplateInstance recipe(@RestPath UUID id, @RestQuery String done) {
    say(
        done,
        switch (done == null ? "" : done) {
          case "added" -> "Kept. Only you see it.";
          case "used" -> "Noted: you used it today.";
          case "restored" -> "Restored, as a new revision.";
          default -> "Saved, as a new revision.";
        });
    Actor actor = actor();
    return Templates.recipe(views.page(actor, recipes.get(actor, id), reports.of(actor, id)));
  }

  @POST
  @Path("recipes/{id}/uses")
  public Response use(@RestPath UUID id) {
    recipes.use(actor(), id);
    return to(path(id) + "?done=used");
  }

  @GET
  @Path("recipes/{id}/withdraw")
  public TemplateInstance withdraw(@RestPath UUID id) {
    Recipe recipe = recipes.get(actor(), id);
    return Templates.withdraw(new Head(id, recipe.name(), recipe.version()));
  }

  @POST
  @Path("recipes/{id}/withdraw")
  public Response withdraw(@RestPath UUID id, @RestForm Integer version) {
    recipes.withdraw(actor(), id, version);
    return to(LIST + "?done=removed");
  }
}
