/**
 * Recipes out of a table of one's own.
 *
 * <p>Entry points: {@link club.emberwell.recipe.table.Table} reads the text, {@link
 * club.emberwell.recipe.table.TableRecipes} makes recipes of its rows.
 */
package club.emberwell.recipe.table;
