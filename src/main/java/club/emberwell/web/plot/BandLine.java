package club.emberwell.web.plot;

import java.util.Arrays;
import java.util.List;

/**
 * One line of a list whose lines share an axis: a band with its middle, or the values themselves
 * where they are too few for one.
 *
 * @param from where the band begins, in drawing units; null where there is none
 * @param length of the band
 * @param middle null where there is none
 * @param dots single values
 */
public record BandLine(Double from, Double length, Double middle, List<Double> dots) {
  /** Width of the drawing. */
  public static final double WIDTH = 300;

  private static final double EDGE = 6;

  /** The axis for a list that holds these values. */
  public static Axis axis(double[] values) {
    return Axis.holding(values, true, EDGE, WIDTH - EDGE);
  }

  /**
   * @param middle in the unit of the axis, or null
   * @param band its ends, or null
   */
  public static BandLine of(Axis axis, Double middle, double[] band, double[] values) {
    Double from = band == null ? null : axis.at(band[0]);
    return new BandLine(
        from,
        band == null ? null : Axis.round(Math.max(2, axis.at(band[1]) - from)),
        middle == null ? null : axis.at(middle),
        Arrays.stream(values).filter(v -> v > 0).mapToObj(axis::at).distinct().toList());
  }
}
