/**
 * What a member keeps for a job: whole settings with the work and the machine they are for, in
 * every version they had. Nobody else sees them.
 *
 * <p>Entry points: {@link club.emberwell.recipe.Recipes} keeps them, {@link
 * club.emberwell.recipe.Revisions} has what they said before, {@link
 * club.emberwell.recipe.RecipeReports} posts one as a report, {@link club.emberwell.recipe.Folders}
 * knows where they lie.
 */
package club.emberwell.recipe;
