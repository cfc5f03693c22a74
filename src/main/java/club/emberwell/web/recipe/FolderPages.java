package club.emberwell.web.recipe;

import club.emberwell.member.Role;
import club.emberwell.recipe.Folders;
import club.emberwell.recipe.Folders.Folder;
import club.emberwell.recipe.RecipeLimits;
import club.emberwell.web.frame.Field;
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
import org.jboss.resteasy.reactive.RestQuery;

/** The folders of one's recipes, and another name for one. */
@Path("/recipes/folders")
@Produces(MediaType.TEXT_HTML)
@Blocking
@RolesAllowed(Role.WRITE)
public class FolderPages extends Pages {
  private static final String PATH = "/recipes/folders";

  private final Folders folders;

  FolderPages(Folders folders) {
    this.folders = folders;
  }

  @CheckedTemplate
  static class Templates {
    private Templates() {}

    static native TemplateInstance folders(List<Line> folders, Form form);
  }

  /** A folder in the list. */
  record Line(String name, int recipes, String href) {
    static Line of(Folder folder) {
      return new Line(folder.name(), folder.recipes(), RecipePages.shelf(folder.name()));
    }
  }

  @GET
  public TemplateInstance folders(@RestQuery String done) {
    say(done, "The folder has its new name.");
    return shown(form());
  }

  private TemplateInstance shown(Form form) {
    return Templates.folders(folders.of(actor()).stream().map(Line::of).toList(), form);
  }

  private Form form() {
    return new Form()
        .add(
            Field.of("from", "Folder")
                .choices(folders.of(actor()), Folder::name, Folder::name)
                .folded()
                .required())
        .add(
            Field.of("to", "New name")
                .hint("A name that another folder has puts both together.")
                .maxLength(RecipeLimits.FOLDER)
                .required());
  }

  @POST
  public Response rename(SentForm sent) {
    return take(sent, this::form, this::shown)
        .store(s -> folders.rename(actor(), s.text("from"), s.text("to")))
        .then(PATH + "?done=renamed");
  }
}
