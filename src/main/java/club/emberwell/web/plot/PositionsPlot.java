package club.emberwell.web.plot;

import java.util.List;

/**
 * Where pieces lie in a fixture, seen from above, true to scale but for how large they are: nobody
 * said that. Drawing units.
 *
 * @param radius of a position
 * @param numbered whether there is room for numbers
 */
public record PositionsPlot(
    Caption caption, double height, double radius, boolean numbered, List<Spot> spots) {
  private static final double WIDTH = 320;
  private static final double EDGE = 8;
  private static final double LEAST_RADIUS = 2;
  private static final double MOST_RADIUS = 26;

  /** Of the pitch: neighbours do not touch. */
  private static final double SHARE = 0.4;

  /** From which on two digits fit. */
  private static final double NUMBERED = 11;

  /**
   * The middle of a piece before it is laid out, in one unit for all.
   *
   * @param taken whether a load has a piece there
   */
  public record Middle(int number, double x, double y, boolean taken) {}

  /** The same laid out. */
  public record Spot(int number, double x, double y, boolean taken) {}

  /**
   * @param middles at least one, from the upper left corner
   * @param pitch the least distance of two of them, 0 where there is one
   */
  public static PositionsPlot of(Caption caption, List<Middle> middles, double pitch) {
    double right = middles.stream().mapToDouble(Middle::x).max().orElseThrow();
    double down = middles.stream().mapToDouble(Middle::y).max().orElseThrow();
    double half = pitch == 0 ? Math.max(1, Math.max(right, down) / 2) : pitch / 2;
    double scale = (WIDTH - 2 * EDGE) / (right + half);
    double radius = Math.max(LEAST_RADIUS, Math.min(MOST_RADIUS, SHARE * scale * 2 * half));
    return new PositionsPlot(
        caption,
        Axis.round(scale * (down + half) + 2 * EDGE),
        Axis.round(radius),
        radius >= NUMBERED,
        middles.stream()
            .map(
                m ->
                    new Spot(
                        m.number(),
                        Axis.round(EDGE + scale * m.x()),
                        Axis.round(EDGE + scale * m.y()),
                        m.taken()))
            .toList());
  }

  public double width() {
    return WIDTH;
  }

  /** Of the outline of the fixture. */
  public double frameWidth() {
    return WIDTH - 2;
  }

  public double frameHeight() {
    return Axis.round(height - 2);
  }
}
