/**
 * Pages of a member's test grids.
 *
 * <p>Entry points: {@link club.emberwell.web.grid.PlanPages} plans them, {@link
 * club.emberwell.web.grid.GridPages} shows, prints and changes them; {@link
 * club.emberwell.web.grid.ResultPages} takes how the tests came out; {@link
 * club.emberwell.web.grid.GridPhotoPages} shows the photo of a grid.
 */
package club.emberwell.web.grid;
