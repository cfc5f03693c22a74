package club.emberwell.web.recipe;

import club.emberwell.entry.Revision;
import club.emberwell.member.Role;
import club.emberwell.recipe.RecipeDifference;
import club.emberwell.recipe.Revisions;
import club.emberwell.recipe.Revisions.Past;
import club.emberwell.recipe.WrittenRecipe;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.Pages;
import club.emberwell.web.frame.SentForm;
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
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;

/** What a recipe said before: every revision, one of them, and bringing it back. */
@Path("/recipes/{id}/revisions")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class RevisionPages extends Pages {
  private final Revisions revisions;
  private final RecipeViews views;

  RevisionPages(Revisions revisions, RecipeViews views) {
    this.revisions = revisions;
    this.views = views;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance revisions(
        UUID id, String name, List<Revision.Step<WrittenRecipe>> steps);

    static native TemplateInstance revision(PastView past, Form form);
  }

  @GET
  public TemplateInstance all(@RestPath UUID id) {
    List<Revision<WrittenRecipe>> all = revisions.of(actor(), id);
    String name = revisions.past(actor(), id, all.get(0).version()).recipe().name();
    return Templates.revisions(id, name, Revision.steps(all, RecipeDifference::between));
  }

  @GET
  @Path("{version}")
  public TemplateInstance one(@RestPath UUID id, @RestPath int version) {
    return shown(id, version, form(id, version));
  }

  private TemplateInstance shown(UUID id, int version, Form form) {
    return Templates.revision(views.past(actor(), revisions.past(actor(), id, version)), form);
  }

  private Form form(UUID id, int version) {
    Past past = revisions.past(actor(), id, version);
    return new Form()
        .add(RecipeForm.reason("Why do you restore it?"))
        .changing("recipe", past.recipe().version(), RecipePages.path(id));
  }

  @POST
  @Path("{version}/restore")
  public Response restore(@RestPath UUID id, @RestPath int version, SentForm sent) {
    return take(sent, () -> form(id, version), form -> shown(id, version, form))
        .store(s -> revisions.restore(actor(), id, s.version(), version, RecipeForm.reason(s)))
        .then(RecipePages.path(id) + "?done=restored");
  }
}
