package club.emberwell.stats;

import java.util.OptionalInt;
import org.apache.commons.statistics.distribution.BinomialDistribution;

/** How many of the pieces of an order are usable. */
public interface UsableCount {
  /** The expected share, 0 to 1. */
  double share();

  /**
   * The chance that at least k of n are usable.
   *
   * @param n pieces ordered, 0 or more
   */
  double atLeast(int n, int k);

  /** The same where the share is known: binomial. */
  static UsableCount known(double share) {
    Checked.probability(share);
    return new UsableCount() {
      @Override
      public double share() {
        return share;
      }

      @Override
      public double atLeast(int n, int k) {
        return k <= 0 ? 1 : BinomialDistribution.of(n, share).survivalProbability(k - 1);
      }
    };
  }

  /**
   * The smallest order with a chance of at least {@code wanted} that k pieces are usable; it exists
   * below {@code most} or not at all. The chance rises with the order, so halving finds it.
   *
   * @param wanted 0 to 1, without 1
   */
  default OptionalInt smallestOrder(int k, double wanted, int most) {
    Checked.level(wanted);
    if (k <= 0) {
      return OptionalInt.of(0);
    }
    int tooFew = k - 1;
    int enough = k;
    while (enough < most && atLeast(enough, k) < wanted) {
      tooFew = enough;
      enough = Math.min(most, 2 * enough);
    }
    if (enough > most || atLeast(enough, k) < wanted) {
      return OptionalInt.empty();
    }
    while (enough - tooFew > 1) {
      int middle = (enough + tooFew) >>> 1;
      if (atLeast(middle, k) < wanted) {
        tooFew = middle;
      } else {
        enough = middle;
      }
    }
    return OptionalInt.of(enough);
  }
}
