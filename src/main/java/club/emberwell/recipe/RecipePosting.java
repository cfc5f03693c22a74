package club.emberwell.recipe;

import club.emberwell.quantity.NumberStyle;
import java.time.Instant;
import java.util.UUID;

/**
 * A recipe on its way in.
 *
 * @param id made by the client, or null; the same id with the same words twice is one recipe
 * @param style how the writer writes numbers; ANY for the API
 * @param at when it was written down, null = now
 * @param askFirst true: implausible values must be confirmed before anything is stored
 */
public record RecipePosting(
    UUID id, WrittenRecipe written, NumberStyle style, Instant at, boolean askFirst) {
  /** As the API sends it: warnings come back with the stored recipe. */
  public static RecipePosting ofApi(UUID id, WrittenRecipe written) {
    return new RecipePosting(id, written, NumberStyle.ANY, null, false);
  }

  /** As a page sends it: implausible values are shown first. */
  public static RecipePosting ofPage(UUID id, WrittenRecipe written, NumberStyle style) {
    return new RecipePosting(id, written, style, null, true);
  }
}
