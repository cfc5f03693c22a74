package club.emberwell.stats;

import java.util.Optional;

/**
 * The mean of a tolerance distribution without a curve: mid-points of the doses weighted by the
 * rise of the share between them. Source: Finney, Statistical Method in Biological Assay (3rd ed.
 * 1978), section 18.7; Hamilton, Russo &amp; Thurston, Environ. Sci. Technol. 11 (1977) 714-719.
 *
 * @param mean on the scale of x (natural logarithm of the dose)
 * @param variance of the mean
 */
public record SpearmanKarber(double mean, double variance) {

  /** Standard error of the mean. */
  public double error() {
    return Math.sqrt(variance);
  }

  /**
   * The estimate; shares are made monotone first.
   *
   * @param x doses, ascending, on the log scale
   * @param successes at each dose
   * @param trials at each dose, at least one
   * @return empty unless the monotone shares reach from 0 to 1 and every dose between has more than
   *     one trial
   */
  public static Optional<SpearmanKarber> of(double[] x, double[] successes, double[] trials) {
    double[] p = shares(x, successes, trials);
    int last = x.length - 1;
    if (last < 1 || p[0] != 0 || p[last] != 1) {
      return Optional.empty();
    }
    double mean = 0;
    for (int i = 0; i < last; i++) {
      mean += (p[i + 1] - p[i]) * (x[i] + x[i + 1]) / 2;
    }
    double variance = 0;
    for (int i = 1; i < last; i++) {
      double spread = p[i] * (1 - p[i]);
      if (spread > 0 && trials[i] <= 1) {
        return Optional.empty();
      }
      double half = (x[i + 1] - x[i - 1]) / 2;
      variance += spread == 0 ? 0 : spread / (trials[i] - 1) * half * half;
    }
    return Optional.of(new SpearmanKarber(mean, variance));
  }

  /** The shares made monotone by {@link Isotonic}, weighted by their trials. */
  static double[] shares(double[] x, double[] successes, double[] trials) {
    Checked.finite(x);
    Checked.sameLength(x.length, successes.length);
    double[] shares = new double[x.length];
    for (int i = 0; i < x.length; i++) {
      if (i > 0 && x[i] <= x[i - 1]) {
        throw new IllegalArgumentException("doses do not ascend: " + x[i]);
      }
      shares[i] = successes[i] / trials[i];
    }
    return Isotonic.increasing(shares, trials);
  }
}
