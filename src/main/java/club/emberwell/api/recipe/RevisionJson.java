package club.emberwell.api.recipe;

import club.emberwell.api.view.FieldChangeJson;
import club.emberwell.api.view.Sendable;
import club.emberwell.catalog.CautionMark;
import club.emberwell.catalog.Cautions;
import club.emberwell.entry.EntryAction;
import club.emberwell.entry.Revision;
import club.emberwell.recipe.RecipeDifference;
import club.emberwell.recipe.WrittenRecipe;
import club.emberwell.report.reading.ReportCautions;
import club.emberwell.report.reading.WrittenWork;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.annotation.JsonSerialize;
import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * One revision of a recipe.
 *
 * @param reason left out of the first one
 * @param changes what was written differently than in the revision before
 * @param written as it can be sent again
 * @param cautionCodes ids of the work's cautions from special care on, the heaviest first
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@Schema(name = "RecipeRevision")
record RevisionJson(
    int version,
    EntryAction action,
    Instant at,
    @Nullable String reason,
    List<FieldChangeJson> changes,
    @JsonSerialize(using = Sendable.class) WrittenRecipe written,
    List<String> cautionCodes) {

  private static List<String> codes(WrittenWork work, Cautions cautions) {
    return CautionMark.of(ReportCautions.asWritten(work, cautions))
        .map(CautionMark::codes)
        .orElse(List.of());
  }

  /**
   * @param revisions newest first
   */
  static List<RevisionJson> all(List<Revision<WrittenRecipe>> revisions, Cautions cautions) {
    return Revision.steps(revisions, RecipeDifference::between).stream()
        .map(
            step ->
                new RevisionJson(
                    step.revision().version(),
                    step.revision().action(),
                    step.revision().at(),
                    step.revision().reason(),
                    FieldChangeJson.all(step.changes().fields()),
                    step.revision().written(),
                    codes(step.revision().written().work(), cautions)))
        .toList();
  }
}
