package club.emberwell.api.recipe;

import club.emberwell.recipe.WrittenRecipe;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A recipe as sent.
 *
 * @param id made by the client, or left out
 * @param reason of a change; needed then
 */
record RecipeRequest(UUID id, @JsonUnwrapped WrittenRecipe written, String reason) {}
