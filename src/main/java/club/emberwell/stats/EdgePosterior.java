package club.emberwell.stats;

import club.emberwell.laser.Effect;
import java.util.Arrays;

/**
 * Both edges of one machine's window after its graded cells, by Bayes' rule on a lattice of ln
 * doses. A cell comes out too little where its dose, off by a logistic noise, lies below the lower
 * edge, and too much where it lies above the upper; the noise is one of {@link #NOISES}, and one
 * judgement in fifty is a slip. Deterministic.
 */
public final class EdgePosterior {
  /** Level of intervals. */
  public static final double LEVEL = 0.95;

  /** Points of the lattice along each edge. */
  static final int POINTS = 31;

  /** Standard deviations of the noise on ln dose, and how likely each is (own guess). */
  private static final double[] NOISES = {0.05, 0.1, 0.2, 0.3};

  private static final double[] NOISE_WEIGHTS = {0.15, 0.35, 0.3, 0.2};

  /** Share of judgements that say nothing (own guess). */
  private static final double SLIPS = 0.02;

  /** A logistic's scale over its standard deviation. */
  private static final double LOGISTIC = Math.sqrt(3) / Math.PI;

  private static final double REACH = 4;
  private static final int ZOOMS = 3;
  private static final double NEGLIGIBLE = 1e-6;

  /** Edges lie at least so far apart. */
  private static final double APART = 0.02;

  private final double[] lower;
  private final double[] upper;

  /** By lower edge, then by upper edge; they sum to 1. */
  private final double[][] weights;

  /** How likely each of {@link #NOISES} is by now. */
  private final double[] noises;

  private final int contradicted;

  private EdgePosterior(double[] lower, double[] upper, Weights found, int contradicted) {
    this.lower = lower;
    this.upper = upper;
    weights = found.edges();
    noises = found.noises();
    this.contradicted = contradicted;
  }

  /** What the lattice comes to: by edges over all noises, and by noise over all edges. */
  private record Weights(double[][] edges, double[] noises) {}

  /**
   * An edge.
   *
   * @param middle median, ln dose
   * @param interval 95 %, ln dose
   * @param deviation standard deviation of ln dose
   */
  public record Edge(double middle, Interval interval, double deviation) {}

  /** Judged cells: ln dose and effect of each. */
  public record Cells(double[] logs, Effect[] effects) {
    public Cells {
      Checked.sameLength(logs.length, effects.length);
      Checked.finite(logs);
    }

    /** Pairs in which less dose did more than right while more dose did too little. */
    int contradicting() {
      int pairs = 0;
      for (int i = 0; i < logs.length; i++) {
        for (int j = 0; j < logs.length; j++) {
          pairs +=
              effects[i] == Effect.TOO_LITTLE && effects[j] == Effect.TOO_MUCH && logs[i] >= logs[j]
                  ? 1
                  : 0;
        }
      }
      return pairs;
    }
  }

  /** The posterior of cells. */
  public static EdgePosterior of(EdgePrior prior, Cells cells) {
    double[] lower =
        lattice(
            prior.lower() - REACH * prior.lowerDeviation(),
            prior.lower() + REACH * prior.lowerDeviation());
    double[] upper =
        lattice(
            prior.upper() - REACH * prior.upperDeviation(),
            prior.upper() + REACH * prior.upperDeviation());
    for (int zoom = 0; ; zoom++) {
      EdgePosterior found =
          new EdgePosterior(
              lower, upper, weights(prior, cells, lower, upper), cells.contradicting());
      if (zoom == ZOOMS) {
        return found;
      }
      lower = closer(lower, found.lowerMargin());
      upper = closer(upper, found.upperMargin());
    }
  }

  private static double[] lattice(double from, double to) {
    double[] points = new double[POINTS];
    Arrays.setAll(points, i -> from + (to - from) * i / (POINTS - 1));
    return points;
  }

  /** Where there is weight, and a step beyond. */
  private static double[] closer(double[] points, double[] margin) {
    int first = 0;
    int last = margin.length - 1;
    for (double sum = margin[0]; sum < NEGLIGIBLE; sum += margin[first]) {
      first++;
    }
    for (double sum = margin[last]; sum < NEGLIGIBLE; sum += margin[last]) {
      last--;
    }
    return lattice(points[Math.max(0, first - 1)], points[Math.min(points.length - 1, last + 1)]);
  }

  private static Weights weights(EdgePrior prior, Cells cells, double[] lower, double[] upper) {
    double[][][] logs = new double[NOISES.length][POINTS][POINTS];
    double most = Double.NEGATIVE_INFINITY;
    for (int noise = 0; noise < NOISES.length; noise++) {
      double[][] below = chances(lower, cells.logs(), NOISES[noise], -1);
      double[][] above = chances(upper, cells.logs(), NOISES[noise], 1);
      for (int i = 0; i < POINTS; i++) {
        for (int j = 0; j < POINTS; j++) {
          double log =
              upper[j] - lower[i] < APART
                  ? Double.NEGATIVE_INFINITY
                  : Math.log(NOISE_WEIGHTS[noise])
                      + prior.logDensity(lower[i], upper[j])
                      + likelihood(cells.effects(), below[i], above[j]);
          logs[noise][i][j] = log;
          most = Math.max(most, log);
        }
      }
    }
    return summed(logs, most);
  }

  private static Weights summed(double[][][] logs, double most) {
    double[][] edges = new double[POINTS][POINTS];
    double[] noises = new double[NOISES.length];
    double sum = 0;
    for (int noise = 0; noise < NOISES.length; noise++) {
      for (int i = 0; i < POINTS; i++) {
        for (int j = 0; j < POINTS; j++) {
          double weight = Math.exp(logs[noise][i][j] - most);
          edges[i][j] += weight;
          noises[noise] += weight;
        }
      }
      sum += noises[noise];
    }
    for (double[] row : edges) {
      for (int j = 0; j < POINTS; j++) {
        row[j] /= sum;
      }
    }
    for (int noise = 0; noise < NOISES.length; noise++) {
      noises[noise] /= sum;
    }
    return new Weights(edges, noises);
  }

  /**
   * By edge and cell the chance to lie beyond the edge.
   *
   * @param sign 1 = above, -1 = below
   */
  private static double[][] chances(double[] edges, double[] logs, double noise, int sign) {
    double[][] chances = new double[edges.length][logs.length];
    for (int i = 0; i < edges.length; i++) {
      for (int c = 0; c < logs.length; c++) {
        chances[i][c] = beyond(edges[i], logs[c], noise, sign);
      }
    }
    return chances;
  }

  static double beyond(double edge, double log, double noise, int sign) {
    return FirthLogit.logistic(sign * (log - edge) / (noise * LOGISTIC));
  }

  private static double likelihood(Effect[] effects, double[] below, double[] above) {
    double log = 0;
    double product = 1;
    for (int c = 0; c < effects.length; c++) {
      product *= slipped(chance(effects[c], below[c], above[c]));
      if (product < 1e-200) {
        log += Math.log(product);
        product = 1;
      }
    }
    return log + Math.log(product);
  }

  private static double chance(Effect effect, double below, double above) {
    return switch (effect) {
      case TOO_LITTLE -> below;
      case RIGHT -> Math.max(0, 1 - below - above);
      case TOO_MUCH -> above;
    };
  }

  static double slipped(double chance) {
    return (1 - SLIPS) * chance + SLIPS / Effect.values().length;
  }

  private double[] lowerMargin() {
    return Arrays.stream(weights).mapToDouble(row -> Arrays.stream(row).sum()).toArray();
  }

  private double[] upperMargin() {
    double[] margin = new double[POINTS];
    for (double[] row : weights) {
      for (int j = 0; j < POINTS; j++) {
        margin[j] += row[j];
      }
    }
    return margin;
  }

  /** Between too little and right. */
  public Edge lower() {
    return edge(lower, lowerMargin());
  }

  /** Between right and too much. */
  public Edge upper() {
    return edge(upper, upperMargin());
  }

  private static Edge edge(double[] points, double[] margin) {
    double tail = (1 - LEVEL) / 2;
    double mean = 0;
    for (int i = 0; i < points.length; i++) {
      mean += margin[i] * points[i];
    }
    double squares = 0;
    for (int i = 0; i < points.length; i++) {
      squares += margin[i] * (points[i] - mean) * (points[i] - mean);
    }
    return new Edge(
        quantile(points, margin, 0.5),
        new Interval(quantile(points, margin, tail), quantile(points, margin, 1 - tail), LEVEL),
        Math.sqrt(squares));
  }

  /** Each point stands for the step round it. */
  private static double quantile(double[] points, double[] margin, double p) {
    double step = points[1] - points[0];
    double sum = 0;
    for (int i = 0; i < points.length; i++) {
      if (sum + margin[i] >= p) {
        return points[i] + step * ((p - sum) / margin[i] - 0.5);
      }
      sum += margin[i];
    }
    return points[points.length - 1];
  }

  /** Root of the mean variance of both edges, ln dose: what the next cells are to make less. */
  public double spread() {
    return Math.hypot(lower().deviation(), upper().deviation()) / Math.sqrt(2);
  }

  /** Chance of right at a ln dose. */
  public double right(double log) {
    double right = 0;
    for (int noise = 0; noise < NOISES.length; noise++) {
      for (int i = 0; i < POINTS; i++) {
        double below = beyond(lower[i], log, NOISES[noise], -1);
        for (int j = 0; j < POINTS; j++) {
          if (weights[i][j] > 0) {
            double above = beyond(upper[j], log, NOISES[noise], 1);
            right += noises[noise] * weights[i][j] * Math.max(0, 1 - below - above);
          }
        }
      }
    }
    return right;
  }

  /** Expected standard deviation of the noise, ln dose. */
  double noise() {
    double mean = 0;
    for (int noise = 0; noise < NOISES.length; noise++) {
      mean += noises[noise] * NOISES[noise];
    }
    return mean;
  }

  /** Pairs of cells in which less dose was too much while more was too little. */
  public int contradicted() {
    return contradicted;
  }

  double[] lowerPoints() {
    return lower;
  }

  double[] upperPoints() {
    return upper;
  }

  double weight(int i, int j) {
    return weights[i][j];
  }
}
