package club.emberwell.web.recipe;

import club.emberwell.member.Actor;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.recipe.RecipePosting;
import club.emberwell.recipe.Recipes;
import club.emberwell.recipe.WrittenRecipe;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.web.frame.SentForm;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/** Reads a form for a recipe, and says all at once what is wrong with it. */
@ApplicationScoped
class RecipeWriting {
  private final Recipes recipes;

  RecipeWriting(Recipes recipes) {
    this.recipes = recipes;
  }

  /**
   * @param id of a new one, or null
   * @throws EntryRefused where it cannot even be written down
   */
  RecipePosting read(Actor actor, SentForm sent, UUID id) {
    NumberStyle style = actor.units().style();
    WrittenRecipe written = RecipeForm.written(sent, style);
    if (sent.remarks().isEmpty()) {
      return RecipePosting.ofPage(id, written, style);
    }
    // so that one look at the form corrects all of it
    List<Remark> told = new ArrayList<>(sent.remarks());
    recipes.faults(actor, new RecipePosting(null, written, style, null, false)).stream()
        .filter(other -> told.stream().noneMatch(t -> t.field().equals(other.field())))
        .toList()
        .forEach(told::add);
    throw new EntryRefused(told);
  }
}
