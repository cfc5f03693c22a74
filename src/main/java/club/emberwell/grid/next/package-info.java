/**
 * What to burn next after the results of a grid: the cells that narrow the window of one's own
 * machine most.
 *
 * <p>Entry point: {@link club.emberwell.grid.next.NextTests}.
 */
package club.emberwell.grid.next;
