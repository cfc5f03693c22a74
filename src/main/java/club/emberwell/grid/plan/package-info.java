/**
 * Plans test grids: which cells, what to expect of them, how they lie on the blank and how long
 * they take.
 *
 * <p>Entry points: {@link club.emberwell.grid.plan.GridPlanner} makes a {@link
 * club.emberwell.grid.plan.GridPlan}.
 */
package club.emberwell.grid.plan;
