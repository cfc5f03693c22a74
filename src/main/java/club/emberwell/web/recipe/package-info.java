/**
 * Pages of a member's recipes.
 *
 * <p>Entry points: {@link club.emberwell.web.recipe.RecipePages} the list and one recipe, {@link
 * club.emberwell.web.recipe.NewRecipePages} the form that "Add to my bench" leads to, {@link
 * club.emberwell.web.recipe.RevisionPages} what it was before, {@link
 * club.emberwell.web.recipe.ImportPages} a table of one's own.
 */
package club.emberwell.web.recipe;
