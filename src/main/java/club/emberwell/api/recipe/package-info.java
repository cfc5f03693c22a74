/**
 * A member's recipes over JSON.
 *
 * <p>Entry points: {@link club.emberwell.api.recipe.RecipeResource} keeps them, {@link
 * club.emberwell.api.recipe.RecipeDeedResource} does something with one, {@link
 * club.emberwell.api.recipe.FolderResource} renames folders.
 */
package club.emberwell.api.recipe;
