package club.emberwell.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * Whether lots of one supplier begin to need another dose. A lot is one value: ln of the dose that
 * was right for it, in a cell of the same member, machine and work. Cells have levels of their own
 * and one spread in common, which holds both how lots differ and how well a lot is judged.
 *
 * <p>The check over lots in their order is the change-point model: the largest t of all splits into
 * lots before and since, against a limit that each new lot of a supplier who never changes passes
 * with the same small chance. Source: Hawkins, Qiu &amp; Kang, "The changepoint model for
 * statistical process control", Journal of Quality Technology 35 (2003) 355-366, here with at least
 * two lots on either side, so that one slip alone flags nothing.
 */
public final class LotDrift {
  /** Level of the intervals. */
  public static final double LEVEL = 0.95;

  /** Lots within which {@link #FALSE_ALARMS} of the suppliers who never change are flagged. */
  public static final int WITHIN = 20;

  /** 0.05 where all lots are judged equally well, a little more where some are judged better. */
  public static final double FALSE_ALARMS = 0.06;

  /** What the spread of earlier lots is known by, at least; below it an interval says nothing. */
  private static final int FEWEST_DEGREES = 2;

  /** Lots on either side of a split. */
  private static final int EACH_SIDE = 2;

  /**
   * The limit of t at 5, 6, ... 40 lots: one lot more passes it with a chance of 0.0032, which adds
   * up to 0.05 at {@link #WITHIN}. From 400,000 invented series that never change; {@code
   * LotDriftTest} holds it by series of its own.
   */
  private static final double[] LIMITS = {
    10.956, 8.014, 6.627, 5.952, 5.497, 5.136, 4.880, 4.691, 4.546, 4.406, 4.304, 4.234, 4.166,
    4.097, 4.047, 4.001, 3.967, 3.921, 3.892, 3.849, 3.833, 3.796, 3.774, 3.755, 3.732, 3.711,
    3.703, 3.672, 3.663, 3.654, 3.652, 3.629, 3.621, 3.619, 3.607, 3.601
  };

  private static final int FIRST_LIMIT = 5;

  /** Lots the check looks back on. */
  private static final int MEMORY = FIRST_LIMIT + LIMITS.length - 1;

  private LotDrift() {}

  /**
   * A lot.
   *
   * @param cell which lots are compared with which
   * @param log ln of the dose that was right
   */
  public record Lot(int cell, double log) {}

  /**
   * How doses stand to those of other lots.
   *
   * @param lots others they were compared with
   * @param ratio of the dose, 1 = none
   * @param interval 95 %, t
   */
  public record Change(int lots, double ratio, Interval interval) {}

  /**
   * What the check noticed.
   *
   * @param at the lot with which it was noticed, an index
   * @param since the first lot that needs another dose, an index
   * @param ratio since then over before
   */
  public record Flag(int at, int since, double ratio) {}

  /**
   * The last lot against those before it of its own cell. The spread is that of single lots, so the
   * interval errs wide by how much lots differ.
   *
   * @param lots in their order
   * @return empty where its cell has no earlier lot or the earlier ones are too few
   */
  public static Optional<Change> newest(List<Lot> lots) {
    int last = lots.size() - 1;
    if (last < 1) {
      return Optional.empty();
    }
    Split earlier = Split.of(lots.subList(0, last), last);
    List<Lot> own = alike(lots.subList(0, last), lots.get(last).cell);
    int degrees = earlier.degrees + 1;
    if (own.isEmpty() || degrees < FEWEST_DEGREES) {
      return Optional.empty();
    }
    double mean = own.stream().mapToDouble(Lot::log).average().orElseThrow();
    double error = Math.sqrt(earlier.squares / degrees * (1 + 1.0 / own.size()));
    return Optional.of(change(own.size(), lots.get(last).log - mean, error, degrees));
  }

  private static List<Lot> alike(List<Lot> lots, int cell) {
    return lots.stream().filter(lot -> lot.cell == cell).toList();
  }

  /**
   * Lots since a place against those before it, within cells.
   *
   * @param since index of the first of them
   * @return empty where no cell has both, or they are too few
   */
  public static Optional<Change> since(List<Lot> lots, int since) {
    Split split = Split.of(lots, since);
    return split.degrees < FEWEST_DEGREES || split.weight == 0
        ? Optional.empty()
        : Optional.of(
            change(
                lots.size(),
                split.difference(),
                Math.sqrt(split.rest() / split.degrees / split.weight),
                split.degrees));
  }

  private static Change change(int lots, double difference, double error, int degrees) {
    double reach = error * TDistribution.of(degrees).inverseSurvivalProbability((1 - LEVEL) / 2);
    Interval interval = new Interval(difference - reach, difference + reach, LEVEL).exp();
    return new Change(lots, Math.exp(difference), interval);
  }

  /** All that was noticed, in the order of lots; after each the check begins anew. */
  public static List<Flag> flags(List<Lot> lots) {
    List<Flag> flags = new ArrayList<>();
    int from = 0;
    for (int n = 1; n <= lots.size(); n++) {
      from = Math.max(from, n - MEMORY);
      Optional<Flag> flag = flag(lots.subList(from, n), from);
      if (flag.isPresent()) {
        flags.add(flag.get());
        from = flag.get().since;
      }
    }
    return List.copyOf(flags);
  }

  private static Optional<Flag> flag(List<Lot> lots, int offset) {
    Optional<Split> most =
        IntStream.rangeClosed(EACH_SIDE, lots.size() - EACH_SIDE)
            .mapToObj(since -> Split.of(lots, since))
            .max((a, b) -> Double.compare(a.t(), b.t()));
    return most.filter(split -> split.t() > limit(split.degrees + 2))
        .map(
            split ->
                new Flag(
                    offset + lots.size() - 1, offset + split.since, Math.exp(split.difference())));
  }

  /** Of as many lots as would have those degrees of freedom in one cell. */
  private static double limit(int lots) {
    return lots < FIRST_LIMIT
        ? Double.POSITIVE_INFINITY
        : LIMITS[Math.min(lots, MEMORY) - FIRST_LIMIT];
  }

  /**
   * Lots before and since a place, each cell about its own mean.
   *
   * @param squares of the values
   * @param weight squares of before and since, 0 and 1
   * @param product of both
   */
  private record Split(int since, double squares, double weight, double product, int degrees) {
    static Split of(List<Lot> lots, int since) {
      double squares = 0;
      double weight = 0;
      double product = 0;
      int[] cells = lots.stream().mapToInt(Lot::cell).distinct().toArray();
      for (int cell : cells) {
        int[] own = IntStream.range(0, lots.size()).filter(i -> lots.get(i).cell == cell).toArray();
        double mean = IntStream.of(own).mapToDouble(i -> lots.get(i).log).average().orElseThrow();
        double late = IntStream.of(own).filter(i -> i >= since).count() / (double) own.length;
        for (int i : own) {
          double value = lots.get(i).log - mean;
          double side = (i >= since ? 1 : 0) - late;
          squares += value * value;
          weight += side * side;
          product += side * value;
        }
      }
      return new Split(since, squares, weight, product, lots.size() - cells.length - 1);
    }

    double difference() {
      return product / weight;
    }

    double rest() {
      return Math.max(0, squares - product * product / weight);
    }

    double t() {
      if (weight == 0 || degrees < 1) {
        return 0;
      }
      double rest = rest();
      double size = Math.abs(product) / Math.sqrt(weight);
      return rest > 0 ? size / Math.sqrt(rest / degrees) : size > 0 ? Double.MAX_VALUE : 0;
    }
  }
}
