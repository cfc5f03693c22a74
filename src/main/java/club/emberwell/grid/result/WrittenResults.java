package club.emberwell.grid.result;

import java.util.List;

/**
 * How the tests of a grid came out, as sent; null = not given.
 *
 * @param effects row by row, a value for each cell: the code of an effect, or null = not judged
 * @param best the best cell; it is right and gets the highest quality
 * @param cells what more is to be said of single cells
 * @param notes of the whole grid; null = those of the plan
 * @param showPhoto true: the photo of the grid becomes one of its report
 */
public record WrittenResults(
    List<List<String>> effects,
    Place best,
    List<WrittenCell> cells,
    String notes,
    Boolean showPhoto) {

  /**
   * What more is to be said of a cell.
   *
   * @param quality 1 to 5, only where it is right
   * @param defects words of the vocabulary
   */
  public record WrittenCell(Integer row, Integer column, Integer quality, List<String> defects) {}
}
