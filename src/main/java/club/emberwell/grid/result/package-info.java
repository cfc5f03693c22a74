/**
 * How the tests of a grid came out, and the report they make.
 *
 * <p>Entry point: {@link club.emberwell.grid.result.GridResults}.
 */
package club.emberwell.grid.result;
