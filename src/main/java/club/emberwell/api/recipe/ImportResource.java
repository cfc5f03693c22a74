package club.emberwell.api.recipe;

import club.emberwell.api.view.RemarkJson;
import club.emberwell.api.writes.ApiRequest;
import club.emberwell.api.writes.Keyed;
import club.emberwell.member.Role;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.recipe.table.Outcome;
import club.emberwell.recipe.table.TableRecipes;
import club.emberwell.recipe.table.WrittenTable;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Recipes out of a table of one's own. */
@Path(RecipeResource.PATH + "/imports")
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Role.WRITE)
@Tag(name = "Recipes")
public class ImportResource {
  private final TableRecipes tables;
  private final ApiRequest request;

  ImportResource(TableRecipes tables, ApiRequest request) {
    this.tables = tables;
    this.request = request;
  }

  /**
   * A table as sent.
   *
   * @param preview true: nothing is stored
   */
  @Schema(name = "RecipeImportRequest")
  record ImportRequest(@JsonUnwrapped WrittenTable written, Boolean preview) {
    boolean looksOnly() {
      return Boolean.TRUE.equals(preview);
    }
  }

  /**
   * What became of it.
   *
   * @param recipes rows that are recipes now, or would be
   * @param refused rows with what is wrong with them
   * @param toMend the refused rows as a table with why in a last column; left out where none was
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "RecipeImport")
  record ImportJson(List<RowJson> recipes, List<RefusedRow> refused, @Nullable String toMend) {
    static ImportJson of(Outcome outcome) {
      return new ImportJson(
          outcome.fitting().stream().map(RowJson::of).toList(),
          outcome.refused().stream().map(RefusedRow::of).toList(),
          outcome.refused().isEmpty() ? null : outcome.toMend());
    }
  }

  /**
   * A row that fits.
   *
   * @param row its number, 1 = the first below the names
   * @param recipe left out of a preview
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "ImportedRow")
  record RowJson(int row, String title, @Nullable UUID recipe) {
    static RowJson of(Outcome.Fitting fitting) {
      return new RowJson(
          fitting.row(), fitting.name(), fitting.recipe() == null ? null : fitting.recipe().id());
    }
  }

  /**
   * A row that does not fit.
   *
   * @param errors at the fields of a recipe
   */
  record RefusedRow(int row, List<RemarkJson> errors) {
    static RefusedRow of(Outcome.Refused refused) {
      return new RefusedRow(refused.row(), RemarkJson.errors(refused.errors()));
    }
  }

  @Keyed
  @POST
  @Operation(
      operationId = "importRecipes",
      summary = "Read recipes in from a table",
      description =
          "A CSV text with a line of names; columns says which of its columns hold what. Rows that"
              + " do not fit are answered with what is wrong and stop no others. Needs an"
              + " Idempotency-Key.")
  @APIResponseSchema(value = ImportJson.class, responseCode = "200")
  public Response read(ImportRequest sent) {
    return request.did(
        sent,
        actor ->
            ImportJson.of(
                sent.looksOnly()
                    ? tables.preview(actor, sent.written(), NumberStyle.ANY)
                    : tables.store(actor, sent.written(), NumberStyle.ANY)));
  }
}
