package club.emberwell.web.report;

import club.emberwell.member.Actor;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.RecipeReports;
import club.emberwell.recipe.Recipes;
import club.emberwell.report.Posting;
import club.emberwell.report.StoredReport;
import club.emberwell.report.reading.WorkProperty;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.UUID;

/** A result by one of one's own recipes: what the form takes from it, and how it is posted. */
@ApplicationScoped
class PostedRecipe {
  private final Recipes recipes;
  private final RecipeReports reports;

  PostedRecipe(Recipes recipes, RecipeReports reports) {
    this.recipes = recipes;
    this.reports = reports;
  }

  /** Posts the result, so that the recipe knows of it. */
  StoredReport post(Actor actor, UUID id, Posting posting) {
    return reports.post(actor, id, posting);
  }

  /** All but the notes, which stay with their owner, and how it came out. */
  Map<String, String> values(Actor actor, UUID id) {
    Recipe recipe = recipes.get(actor, id);
    Map<String, String> values =
        ReportFormValues.without(
            recipe.written().report(),
            recipe.read().remarks(),
            0,
            property -> property == WorkProperty.NOTES);
    values.put(ReportForm.RECIPE, id.toString());
    return values;
  }
}
