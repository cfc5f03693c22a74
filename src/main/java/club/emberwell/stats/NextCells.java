package club.emberwell.stats;

import club.emberwell.laser.Effect;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;

/**
 * Which cells to burn together on the next blank: those after which the expected variance of the
 * two edges is least. One is taken after the other, those before it as burned; then each is taken
 * out once and chosen again (Fedorov's exchange).
 *
 * <p>The expectation is over windows drawn evenly from the posterior; what cells would tell where
 * one of them is the truth is taken as their expected log likelihood, which adds up over cells, so
 * that no outcomes of many cells together are walked through (own approximation, checked by
 * simulation). Deterministic.
 */
public final class NextCells {
  /** Windows taken for the truth in turn. */
  private static final int TRUTHS = 32;

  /** Points of less weight than this share of the heaviest change nothing. */
  private static final double NEGLIGIBLE = 1e-4;

  /**
   * The cells.
   *
   * @param logs ln doses
   * @param spread expected {@link EdgePosterior#spread} after them
   */
  public record Choice(List<Double> logs, double spread) {}

  /** Windows that may be, and the noise that is expected. */
  private record Windows(double[] lower, double[] upper, double[] weights, double noise) {
    static Windows of(EdgePosterior posterior) {
      double most = 0;
      for (int i = 0; i < EdgePosterior.POINTS; i++) {
        for (int j = 0; j < EdgePosterior.POINTS; j++) {
          most = Math.max(most, posterior.weight(i, j));
        }
      }
      List<double[]> found = new ArrayList<>();
      for (int i = 0; i < EdgePosterior.POINTS; i++) {
        for (int j = 0; j < EdgePosterior.POINTS; j++) {
          // every second, like a chessboard: half the work for the same shape
          if ((i + j) % 2 == 0 && posterior.weight(i, j) > NEGLIGIBLE * most) {
            found.add(
                new double[] {
                  posterior.lowerPoints()[i], posterior.upperPoints()[j], posterior.weight(i, j)
                });
          }
        }
      }
      double sum = found.stream().mapToDouble(window -> window[2]).sum();
      return new Windows(
          found.stream().mapToDouble(window -> window[0]).toArray(),
          found.stream().mapToDouble(window -> window[1]).toArray(),
          found.stream().mapToDouble(window -> window[2] / sum).toArray(),
          posterior.noise());
    }

    int size() {
      return weights.length;
    }

    /** At even steps through the weight, so that each stands for as much. */
    int[] truths() {
      int[] truths = new int[TRUTHS];
      double sum = 0;
      int next = 0;
      for (int w = 0; w < weights.length && next < TRUTHS; w++) {
        sum += weights[w];
        while (next < TRUTHS && sum >= (next + 0.5) / TRUTHS) {
          truths[next++] = w;
        }
      }
      return Arrays.copyOf(truths, next);
    }

    /** By effect and window. */
    double[][] chances(double log) {
      double[][] chances = new double[Effect.values().length][size()];
      for (int w = 0; w < size(); w++) {
        double below = EdgePosterior.beyond(lower[w], log, noise, -1);
        double above = EdgePosterior.beyond(upper[w], log, noise, 1);
        chances[Effect.TOO_LITTLE.ordinal()][w] = EdgePosterior.slipped(below);
        chances[Effect.RIGHT.ordinal()][w] = EdgePosterior.slipped(Math.max(0, 1 - below - above));
        chances[Effect.TOO_MUCH.ordinal()][w] = EdgePosterior.slipped(above);
      }
      return chances;
    }

    /** Sum of the variances of both edges. */
    double variance(double[] of) {
      double sum = 0;
      double a = 0;
      double b = 0;
      double aa = 0;
      double bb = 0;
      for (int w = 0; w < of.length; w++) {
        sum += of[w];
        a += of[w] * lower[w];
        b += of[w] * upper[w];
        aa += of[w] * lower[w] * lower[w];
        bb += of[w] * upper[w] * upper[w];
      }
      return Math.max(0, aa / sum - a * a / sum / sum) + Math.max(0, bb / sum - b * b / sum / sum);
    }
  }

  private NextCells() {}

  /**
   * Chooses.
   *
   * @param candidates ln doses that the machine can do; each is burned at most once
   * @param cells how many at most
   */
  public static Choice of(EdgePosterior posterior, double[] candidates, int cells) {
    Windows windows = Windows.of(posterior);
    int[] truths = windows.truths();
    // what each candidate would multiply the weights by, for each truth
    double[][][] tells = new double[candidates.length][][];
    for (int c = 0; c < candidates.length; c++) {
      tells[c] = tells(windows, truths, candidates[c]);
    }
    double[][] state = new double[truths.length][];
    Arrays.setAll(state, t -> windows.weights().clone());
    int[] chosen = new int[Math.min(candidates.length, cells)];
    BitSet burned = new BitSet();
    double variance = 0;
    for (int n = 0; n < 2 * chosen.length; n++) {
      int place = n % chosen.length;
      if (n >= chosen.length) {
        change(state, tells[chosen[place]], (weight, told) -> weight / told);
      }
      double[] expected = expected(windows, state, tells);
      burned.clear(chosen[place]);
      chosen[place] =
          IntStream.range(0, expected.length)
              .filter(c -> !burned.get(c))
              .boxed()
              .min(Comparator.comparingDouble(c -> expected[c]))
              .orElseThrow();
      burned.set(chosen[place]);
      variance = expected[chosen[place]];
      change(state, tells[chosen[place]], (weight, told) -> weight * told);
    }
    double spread = chosen.length == 0 ? posterior.spread() : Math.sqrt(variance / 2);
    return new Choice(Arrays.stream(chosen).mapToObj(c -> candidates[c]).toList(), spread);
  }

  private static void change(double[][] state, double[][] tells, DoubleBinaryOperator how) {
    for (int t = 0; t < state.length; t++) {
      for (int w = 0; w < state[t].length; w++) {
        state[t][w] = how.applyAsDouble(state[t][w], tells[t][w]);
      }
    }
  }

  private static double[][] tells(Windows windows, int[] truths, double log) {
    double[][] chances = windows.chances(log);
    double[][] logs = new double[chances.length][];
    Arrays.setAll(logs, e -> Arrays.stream(chances[e]).map(Math::log).toArray());
    double[][] tells = new double[truths.length][windows.size()];
    for (int t = 0; t < truths.length; t++) {
      for (int w = 0; w < windows.size(); w++) {
        double expected = 0;
        for (int e = 0; e < logs.length; e++) {
          expected += chances[e][truths[t]] * (logs[e][w] - logs[e][truths[t]]);
        }
        tells[t][w] = Math.exp(expected);
      }
    }
    return tells;
  }

  /** The variance expected after each candidate. */
  private static double[] expected(Windows windows, double[][] state, double[][][] tells) {
    double[] expected = new double[tells.length];
    double[] product = new double[windows.size()];
    for (int c = 0; c < tells.length; c++) {
      for (int t = 0; t < state.length; t++) {
        for (int w = 0; w < product.length; w++) {
          product[w] = state[t][w] * tells[c][t][w];
        }
        expected[c] += windows.variance(product) / state.length;
      }
    }
    return expected;
  }
}
