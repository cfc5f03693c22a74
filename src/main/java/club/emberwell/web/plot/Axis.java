package club.emberwell.web.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * A horizontal axis in drawing units, linear or logarithmic.
 *
 * @param min smallest value in sight, &gt; 0 where logarithmic
 * @param max largest value in sight, &gt; min
 */
public record Axis(double min, double max, boolean logarithmic, double left, double right) {
  private static final double[] LOG_STEPS = {1, 2, 5};
  private static final int MOST_TICKS = 6;
  private static final double MARGIN = 0.06;

  /** A tick with its place and text. */
  public record Tick(double x, String label) {}

  /**
   * An axis that holds all these values with a margin; values of no spread get room on both sides.
   */
  public static Axis holding(double[] values, boolean logarithmic, double left, double right) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (double value : values) {
      if (Double.isFinite(value) && (!logarithmic || value > 0)) {
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
    }
    if (low > high) {
      return new Axis(1, 10, logarithmic, left, right);
    }
    if (logarithmic) {
      double span = Math.max(Math.log(high / low), Math.log(1.5));
      double middle = (Math.log(high) + Math.log(low)) / 2;
      double half = span * (0.5 + MARGIN);
      return new Axis(Math.exp(middle - half), Math.exp(middle + half), true, left, right);
    }
    double span = Math.max(high - low, Math.max(Math.abs(high) * 0.2, 1e-9));
    double middle = (high + low) / 2;
    double half = span * (0.5 + MARGIN);
    return new Axis(middle - half, middle + half, false, left, right);
  }

  /** Where a value stands; values out of sight stand at the edge. */
  public double at(double value) {
    double share =
        logarithmic ? Math.log(value / min) / Math.log(max / min) : (value - min) / (max - min);
    return round(left + Math.max(0, Math.min(1, share)) * (right - left));
  }

  /** Round numbers to read the axis by. */
  public List<Tick> ticks(DoubleFunction<String> label) {
    List<Double> places = logarithmic ? logarithmicPlaces() : List.of();
    if (places.size() < 2) {
      places = linearPlaces();
    }
    int stride = (places.size() + MOST_TICKS - 1) / MOST_TICKS;
    List<Tick> ticks = new ArrayList<>();
    for (int i = 0; i < places.size(); i += Math.max(1, stride)) {
      ticks.add(new Tick(at(places.get(i)), label.apply(places.get(i))));
    }
    return ticks;
  }

  private List<Double> logarithmicPlaces() {
    List<Double> places = new ArrayList<>();
    int from = (int) Math.floor(Math.log10(min));
    int to = (int) Math.ceil(Math.log10(max));
    for (int decade = from; decade <= to; decade++) {
      for (double step : LOG_STEPS) {
        double value = step * Math.pow(10, decade);
        if (value >= min && value <= max) {
          places.add(value);
        }
      }
    }
    return places;
  }

  private List<Double> linearPlaces() {
    double rough = (max - min) / 4;
    double decade = Math.pow(10, Math.floor(Math.log10(rough)));
    double share = rough / decade;
    double step = (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10) * decade;
    List<Double> places = new ArrayList<>();
    for (double value = Math.ceil(min / step) * step; value <= max; value += step) {
      places.add(Math.abs(value) < step / 1e6 ? 0 : value);
    }
    return places;
  }

  static double round(double drawingUnits) {
    return Math.round(drawingUnits * 10) / 10.0;
  }
}
