package club.emberwell.web.plot;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;

/**
 * How far the colour of each test is from the bare surface, over its dose. Places across are
 * percent of the width, places down pixels, as in {@link DosePlot}.
 *
 * @param curves through the tests of each row of the grid, in the order of their doses
 * @param downTicks of the distance
 * @param tests each with its effect's shape
 * @param ticks of the dose
 */
public record DistancePlot(
    Caption caption,
    List<String> curves,
    List<Axis.Tick> downTicks,
    List<Test> tests,
    List<Axis.Tick> ticks,
    String axisName) {
  private static final double HEIGHT = 200;
  private static final double TOP = 12;
  private static final double EDGE = 3;
  private static final double FULL = 100;

  /**
   * A test before it is laid out.
   *
   * @param row of the grid
   * @param kind little, right, much, or none where it is not judged
   */
  public record Measured(
      int row, double dose, double distance, String kind, String href, String name) {}

  /** A test at its place. */
  public record Test(double x, double y, String kind, String href, String name) {}

  /**
   * @param measured at least one
   * @param label of a dose
   */
  public static DistancePlot of(
      Caption caption, List<Measured> measured, String axisName, DoubleFunction<String> label) {
    Axis x =
        Axis.holding(
            measured.stream().mapToDouble(Measured::dose).toArray(), true, EDGE, FULL - EDGE);
    double most = measured.stream().mapToDouble(Measured::distance).max().orElse(1);
    Axis y = Axis.holding(new double[] {0, most}, false, HEIGHT, TOP);
    List<Measured> sorted =
        measured.stream().sorted(Comparator.comparingDouble(Measured::dose)).toList();
    Map<Integer, String> curves =
        sorted.stream()
            .collect(
                Collectors.groupingBy(
                    Measured::row,
                    TreeMap::new,
                    Collectors.mapping(
                        m -> x.at(m.dose()) + "," + y.at(m.distance()), Collectors.joining(" "))));
    List<Test> tests =
        sorted.stream()
            .map(m -> new Test(x.at(m.dose()), y.at(m.distance()), m.kind(), m.href(), m.name()))
            .toList();
    return new DistancePlot(
        caption,
        List.copyOf(curves.values()),
        y.ticks(distance -> Long.toString(Math.round(distance))),
        tests,
        x.ticks(label),
        axisName);
  }

  public double axisY() {
    return HEIGHT;
  }

  public double height() {
    return HEIGHT + 40;
  }
}
