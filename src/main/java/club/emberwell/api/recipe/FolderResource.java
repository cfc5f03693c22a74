package club.emberwell.api.recipe;

import club.emberwell.api.view.ListJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.member.Role;
import club.emberwell.recipe.Folders;
import club.emberwell.recipe.Folders.Folder;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The folders in which one's own recipes lie. */
@Path(RecipeResource.PATH + "/folders")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Recipes")
public class FolderResource {
  private final Folders folders;
  private final ApiRequest request;

  FolderResource(Folders folders, ApiRequest request) {
    this.folders = folders;
    this.request = request;
  }

  /** From which name to which. */
  @Schema(name = "FolderRenaming")
  record Renaming(String from, String to) {}

  @GET
  @Operation(operationId = "listRecipeFolders", summary = "My folders, by name")
  public ListJson<Folder> list() {
    return ListJson.of(folders.of(request.actor()));
  }

  @Keyed
  @POST
  @Path("renamings")
  @Operation(
      operationId = "renameRecipeFolder",
      summary = "Give a folder another name",
      description =
          "Each recipe in it gets a revision that says so. A name that another folder has puts both"
              + " together. Needs an Idempotency-Key.")
  @APIResponseSchema(value = Folder.class, responseCode = "200")
  public Response rename(Renaming sent) {
    return request.did(sent, actor -> folders.rename(actor, sent.from(), sent.to()));
  }
}
