package club.emberwell.stats;

import org.apache.commons.numbers.gamma.LogBeta;

/**
 * How many of n pieces are usable, where their share is known as well as a beta distribution says:
 * Skellam, J. R. Statist. Soc. B 10 (1948) 257-261.
 *
 * @param alpha more than 0; of a record with Jeffreys' prior the usable pieces and a half
 * @param beta more than 0; the others and a half
 */
public record BetaBinomial(double alpha, double beta) implements UsableCount {
  private static final double HALF = 0.5;

  public BetaBinomial {
    if (!(alpha > 0 && beta > 0 && Double.isFinite(alpha) && Double.isFinite(beta))) {
      throw new IllegalArgumentException("no beta distribution: " + alpha + ", " + beta);
    }
  }

  /** What a count says of the next pieces, with Jeffreys' prior, beta(1/2, 1/2). */
  public static BetaBinomial ofRecord(int usable, int received) {
    if (usable < 0 || usable > received) {
      throw new IllegalArgumentException(usable + " of " + received);
    }
    return new BetaBinomial(usable + HALF, received - usable + HALF);
  }

  @Override
  public double share() {
    return alpha / (alpha + beta);
  }

  /** Sums the tail with fewer chances in it, from its largest term outwards. */
  @Override
  public double atLeast(int n, int k) {
    if (k <= 0) {
      return 1;
    }
    if (k > n) {
      return 0;
    }
    return k > n * share() ? upper(n, k) : 1 - lower(n, k - 1);
  }

  private double upper(int n, int k) {
    double term = chance(n, k);
    double sum = term;
    for (int x = k; x < n && term > 0; x++) {
      term *= (double) (n - x) / (x + 1) * (alpha + x) / (beta + n - x - 1);
      sum += term;
    }
    return sum;
  }

  private double lower(int n, int k) {
    double term = chance(n, k);
    double sum = term;
    for (int x = k; x > 0 && term > 0; x--) {
      term *= (double) x / (n - x + 1) * (beta + n - x) / (alpha + x - 1);
      sum += term;
    }
    return sum;
  }

  // choose(n, x) is 1 / ((n + 1) B(x + 1, n - x + 1))
  private double chance(int n, int x) {
    return Math.exp(
        LogBeta.value(x + alpha, n - x + beta)
            - LogBeta.value(alpha, beta)
            - LogBeta.value(x + 1.0, n - x + 1.0)
            - Math.log(n + 1.0));
  }
}
