package club.emberwell.report.reading;

import java.util.List;

/**
 * One settings set with its effect, as typed.
 *
 * @param row position in a grid, null outside grids
 * @param column position in a grid, null outside grids
 */
public record WrittenTrial(
    Integer row,
    Integer column,
    WrittenSettings settings,
    String effect,
    Integer quality,
    List<String> defects) {}
