package club.emberwell.web.report;

import club.emberwell.member.Actor;
import club.emberwell.recipe.Recipe;
import club.emberwell.recipe.Recipes;
import club.emberwell.report.reading.WorkProperty;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.Map;
import java.util.UUID;

/** What the form for a result takes from the recipe by which it was made. */
@ApplicationScoped
class PostedRecipe {
  private final Recipes recipes;

  PostedRecipe(Recipes recipes) {
    this.recipes = recipes;
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
