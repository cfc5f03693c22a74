/**
 * Test grids: planned round a range, kept by their authors, judged by a report.
 *
 * <p>Entry points: {@link club.emberwell.grid.GridService} keeps them, {@link
 * club.emberwell.grid.Grid} is one of them.
 */
package club.emberwell.grid;
