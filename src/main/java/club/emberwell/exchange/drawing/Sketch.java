package club.emberwell.exchange.drawing;

import java.util.List;

/**
 * What is to be drawn.
 *
 * @param cut an edge and a hole instead of a mark
 * @param rows of trials; 1 where there is one
 * @param at where the dose of each lies in the window, row after row: -1 the least that is right, 1
 *     the most
 * @param seed of whatever differs between two pictures of the same
 */
public record Sketch(
    String of, String colour, boolean cut, int rows, int columns, List<Double> at, long seed) {
  public Sketch {
    if (at.size() != rows * columns) {
      throw new IllegalArgumentException(at.size() + " trials in " + rows + " x " + columns);
    }
  }
}
