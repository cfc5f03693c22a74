/**
 * A grid on paper and for programs: a drawing in true millimetres and a table.
 *
 * <p>Entry points: {@link club.emberwell.grid.sheet.GridSvg} and {@link
 * club.emberwell.grid.sheet.GridCsv}.
 */
package club.emberwell.grid.sheet;
