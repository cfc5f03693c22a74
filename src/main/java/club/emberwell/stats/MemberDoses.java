package club.emberwell.stats;

import java.util.Arrays;
import java.util.Optional;

/**
 * The doses members tried, set out for {@link WithinBetween}: for each trial ln dose minus the
 * member's own mean of it, and that mean minus the mean over members. Every member has the same
 * total weight, so that nobody moves an edge by repeating one result.
 *
 * <p>More than 300 trials are gathered in cells of 5 % in both directions, each at the mean of what
 * lies in it.
 */
final class MemberDoses {
  /** Up to so many trials each stands alone. */
  private static final int SINGLE = 300;

  /** Sides of a cell in ln dose, unless that makes more than {@link #MOST} of them in a row. */
  private static final double STEP = 0.05;

  private static final int MOST = 256;

  /** Means of ln dose closer than this are one. */
  private static final double SAME = 1e-9;

  /** Constant, within, between. */
  private static final int COLUMNS = 3;

  private final int[] members;
  private final int count;
  private final double[] weights;
  private final double[] means;
  private final double mean;

  /** Cell of each trial, and the covariates of each cell. */
  private final int[] cells;

  private final double[][] rows;
  private final boolean[] all;

  /**
   * @param members 0, 1, 2, ... for each trial, ascending
   * @param logs ln dose of each
   */
  MemberDoses(int[] members, double[] logs) {
    this.members = members;
    count = members.length == 0 ? 0 : members[members.length - 1] + 1;
    int[] own = new int[count];
    means = means(members, logs, own);
    weights = new double[members.length];
    for (int i = 0; i < weights.length; i++) {
      weights[i] = (double) members.length / count / own[members[i]];
    }
    mean = Arrays.stream(means).average().orElse(0);
    double[] within = new double[logs.length];
    for (int i = 0; i < logs.length; i++) {
      within[i] = logs[i] - means[members[i]];
    }
    cells = cells(within);
    int n = Arrays.stream(cells).max().orElse(-1) + 1;
    rows = new double[n][COLUMNS];
    all = new boolean[logs.length];
    Arrays.fill(all, true);
    double[] mass = mass(-1, all);
    for (int i = 0; i < cells.length; i++) {
      double[] row = rows[cells[i]];
      row[1] += weights[i] * within[i];
      row[2] += weights[i] * (means[members[i]] - mean);
    }
    for (int cell = 0; cell < n; cell++) {
      rows[cell][0] = 1;
      rows[cell][1] /= mass[cell];
      rows[cell][2] /= mass[cell];
    }
  }

  private static double[] means(int[] members, double[] logs, int[] own) {
    double[] means = new double[own.length];
    for (int i = 0; i < logs.length; i++) {
      means[members[i]] += logs[i];
      own[members[i]]++;
    }
    for (int member = 0; member < own.length; member++) {
      means[member] /= own[member];
    }
    return means;
  }

  private int[] cells(double[] within) {
    int[] found = new int[within.length];
    if (within.length <= SINGLE) {
      Arrays.setAll(found, i -> i);
      return found;
    }
    double left = Arrays.stream(within).min().orElseThrow();
    double bottom = Arrays.stream(means).min().orElseThrow();
    double width = Arrays.stream(within).max().orElseThrow() - left;
    double height = Arrays.stream(means).max().orElseThrow() - bottom;
    double across = Math.max(STEP, width / MOST);
    double up = Math.max(STEP, height / MOST);
    int[] numbers = new int[(MOST + 1) * (MOST + 1)];
    int n = 0;
    for (int i = 0; i < within.length; i++) {
      int x = (int) ((within[i] - left) / across);
      int y = (int) ((means[members[i]] - bottom) / up);
      int place = x * (MOST + 1) + y;
      if (numbers[place] == 0) {
        numbers[place] = ++n;
      }
      found[i] = numbers[place] - 1;
    }
    return found;
  }

  int count() {
    return count;
  }

  double mean() {
    return mean;
  }

  /** How far the mean over the others lies from the mean over all. */
  double shift(int out) {
    return (mean - means[out]) / (count - 1);
  }

  /** Weights of the cells by those of the trials that count, one member left out or nobody (-1). */
  private double[] mass(int out, boolean[] counted) {
    double share = out < 0 ? 1 : share(out);
    double[] sums = new double[rows.length];
    for (int i = 0; i < cells.length; i++) {
      if (counted[i] && members[i] != out) {
        sums[cells[i]] += share * weights[i];
      }
    }
    return sums;
  }

  /** So that the weights of the others sum to their trials. */
  private double share(int out) {
    long own = Arrays.stream(members).filter(member -> member == out).count();
    double others = members.length - own;
    return others / members.length * count / (count - 1);
  }

  /**
   * The fit without a member (or with all, -1): constant, within, between. Where all members tried
   * the same on the mean nothing lies between them, and the last is that within.
   */
  Optional<double[]> fit(boolean[] reached, int out, double[] start) {
    double[] successes = mass(out, reached);
    double[] trials = mass(out, all);
    if (apart(out)) {
      return FirthLogit.near(rows, successes, trials, start);
    }
    double[][] within = new double[rows.length][];
    Arrays.setAll(within, i -> Arrays.copyOf(rows[i], 2));
    double centre = out < 0 ? 0 : shift(out);
    return FirthLogit.near(within, successes, trials, Arrays.copyOf(start, 2))
        .map(beta -> new double[] {beta[0] - beta[1] * centre, beta[1], beta[1]});
  }

  private boolean apart(int out) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int member = 0; member < count; member++) {
      if (member != out) {
        low = Math.min(low, means[member]);
        high = Math.max(high, means[member]);
      }
    }
    return high - low > SAME;
  }

  /**
   * One step of scoring from the fit of all toward that without each member in turn, which is near
   * it where members are many (MacKinnon, Nielsen &amp; Webb's linearised jackknife).
   *
   * @param beta the fit of all, with a column between members
   * @return for each member the coefficients; null where the others determine none
   */
  double[][] steps(boolean[] reached, double[] beta) {
    Scores scores = Scores.of(rows, mass(-1, all), beta);
    double[][] found = new double[count][];
    int from = 0;
    for (int member = 0; member < count; member++) {
      double[] score = new double[COLUMNS];
      double[][] rest = scores.information();
      for (; from < members.length && members[from] == member; from++) {
        int cell = cells[from];
        double residual = weights[from] * scores.residual(cell, reached[from]);
        for (int j = 0; j < COLUMNS; j++) {
          score[j] -= residual * rows[cell][j];
        }
        FirthLogit.add(rest, rows[cell], -weights[from] * scores.variance()[cell]);
      }
      found[member] =
          NewtonAscent.Inverse.of(rest)
              .map(inverse -> sum(beta, inverse.matrix().operate(score)))
              .orElse(null);
    }
    return found;
  }

  private static double[] sum(double[] a, double[] b) {
    double[] sum = new double[a.length];
    Arrays.setAll(sum, i -> a[i] + b[i]);
    return sum;
  }

  /**
   * What each cell adds to the penalised score, for a weight of 1.
   *
   * @param chance fitted
   * @param variance chance x (1 - chance)
   * @param penalty Firth's part: leverage x (1/2 - chance)
   */
  private record Scores(double[] chance, double[] variance, double[] penalty, double[][] total) {

    static Scores of(double[][] rows, double[] mass, double[] beta) {
      double[] chance = new double[rows.length];
      double[] variance = new double[rows.length];
      double[] penalty = new double[rows.length];
      double[][] total = new double[COLUMNS][COLUMNS];
      for (int i = 0; i < rows.length; i++) {
        double odds = beta[0] + beta[1] * rows[i][1] + beta[2] * rows[i][2];
        chance[i] = FirthLogit.logistic(odds);
        variance[i] = chance[i] * (1 - chance[i]);
        FirthLogit.add(total, rows[i], mass[i] * variance[i]);
      }
      double[][] inverse =
          NewtonAscent.Inverse.of(total)
              .map(found -> found.matrix().getData())
              .orElse(new double[COLUMNS][COLUMNS]);
      for (int i = 0; i < rows.length; i++) {
        penalty[i] = variance[i] * FirthLogit.form(inverse, rows[i]) * (0.5 - chance[i]);
      }
      return new Scores(chance, variance, penalty, total);
    }

    double residual(int cell, boolean reached) {
      return (reached ? 1 : 0) - chance[cell] + penalty[cell];
    }

    double[][] information() {
      return Arrays.stream(total).map(double[]::clone).toArray(double[][]::new);
    }
  }
}
