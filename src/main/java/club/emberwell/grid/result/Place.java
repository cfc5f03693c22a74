package club.emberwell.grid.result;

/**
 * Where a cell stands in its grid.
 *
 * @param row from 0, from the top
 * @param column from 0, from the left
 */
public record Place(Integer row, Integer column) {}
