package club.emberwell.stats;

/**
 * Estimators of the variance between estimates, never below 0. Reviewed by Veroniki et al.,
 * Research Synthesis Methods 7 (2016) 55-79. All need two estimates or more.
 */
public enum BetweenVariance {
  /** None: one common mean. */
  FIXED {
    @Override
    double of(double[] y, double[] v) {
      return 0;
    }
  },
  /** DerSimonian and Laird, moments with fixed-effect weights. */
  DERSIMONIAN_LAIRD {
    @Override
    double of(double[] y, double[] v) {
      var fixed = RandomEffects.Weighted.of(y, v, 0);
      double scale = fixed.sum() - fixed.sumOfSquares() / fixed.sum();
      return Math.max(0, (fixed.squares() - (y.length - 1)) / scale);
    }
  },
  /** Paule and Mandel: the value at which the weighted sum of squares is k - 1. */
  PAULE_MANDEL {
    @Override
    double of(double[] y, double[] v) {
      int degrees = y.length - 1;
      if (excess(y, v, 0, degrees) <= 0) {
        return 0;
      }
      double low = 0;
      double high = 1;
      while (excess(y, v, high, degrees) > 0) {
        high *= 2;
      }
      while (high - low > PRECISION * high) {
        double middle = (low + high) / 2;
        if (excess(y, v, middle, degrees) > 0) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return (low + high) / 2;
    }

    private double excess(double[] y, double[] v, double tau2, int degrees) {
      return RandomEffects.Weighted.of(y, v, tau2).squares() - degrees;
    }
  },
  /** Restricted maximum likelihood. */
  REML {
    @Override
    double of(double[] y, double[] v) {
      return score(y, v, true);
    }
  },
  /** Maximum likelihood, biased downwards. */
  ML {
    @Override
    double of(double[] y, double[] v) {
      return score(y, v, false);
    }
  },
  /** Hedges and Olkin: plain variance less the mean of the variances. */
  HEDGES {
    @Override
    double of(double[] y, double[] v) {
      double deviation = Summary.standardDeviation(y);
      return Math.max(0, deviation * deviation - Summary.mean(v));
    }
  },
  /** Sidik and Jonkman: always above 0. */
  SIDIK_JONKMAN {
    @Override
    double of(double[] y, double[] v) {
      double deviation = Summary.standardDeviation(y);
      double crude = deviation * deviation * (y.length - 1) / y.length;
      double squares = RandomEffects.Weighted.of(y, v, crude).squares();
      return crude * squares / (y.length - 1);
    }
  };

  private static final double PRECISION = 1e-14;
  private static final int MOST_STEPS = 10_000;

  /** The estimate from two estimates or more and their variances. */
  abstract double of(double[] y, double[] v);

  /** Fisher scoring on the (restricted) likelihood, kept at 0 or above. */
  private static double score(double[] y, double[] v, boolean restricted) {
    double tau2 = HEDGES.of(y, v);
    for (int i = 0; i < MOST_STEPS; i++) {
      double next = Math.max(0, tau2 + step(y, v, tau2, restricted));
      if (Math.abs(next - tau2) <= PRECISION * Math.max(next, Summary.mean(v))) {
        return next;
      }
      tau2 = next;
    }
    return tau2;
  }

  private static double step(double[] y, double[] v, double tau2, boolean restricted) {
    var at = RandomEffects.Weighted.of(y, v, tau2);
    double squares = 0;
    for (int i = 0; i < y.length; i++) {
      double weight = 1 / (v[i] + tau2);
      squares += weight * weight * (y[i] - at.mean()) * (y[i] - at.mean());
    }
    double share = at.sumOfSquares() / at.sum();
    if (!restricted) {
      return (squares - at.sum()) / at.sumOfSquares();
    }
    double trace = at.sum() - share;
    double traceOfSquare = at.sumOfSquares() - 2 * at.sumOfCubes() / at.sum() + share * share;
    return (squares - trace) / traceOfSquare;
  }
}
