package club.emberwell.consensus;

import club.emberwell.stats.Quantiles;
import club.emberwell.stats.Summary;
import java.util.Collection;

/** Middles of a few logarithms. */
final class Logs {
  private Logs() {}

  static double median(Collection<Double> logs) {
    return Quantiles.median(array(logs));
  }

  static double mean(Collection<Double> logs) {
    return Summary.mean(array(logs));
  }

  static double[] array(Collection<Double> logs) {
    return logs.stream().mapToDouble(Double::doubleValue).toArray();
  }
}
