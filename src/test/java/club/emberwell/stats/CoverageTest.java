package club.emberwell.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import java.util.function.BooleanSupplier;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

/**
 * What the intervals claim, against made worlds whose truth is known. Seeds are fixed; the standard
 * error of a share of 20,000 runs is at most 0.003. The window's coverage is in DoseWindowTest.
 */
class CoverageTest {
  private static final int RUNS = 20_000;
  private final RandomGenerator random = new SplittableRandom(20261125);

  @Test
  void theIntervalOfTheMedianCoversAsOftenAsItPrints() {
    for (int n : new int[] {6, 9, 15, 30}) {
      double printed = MedianInterval.ranks(n, 0.95).orElseThrow().coverage();
      assertEquals(
          printed, share(() -> MedianInterval.of(skewed(n)).orElseThrow().contains(1)), 0.01);
    }
  }

  @Test
  void theShareOfMembersCoversItsTruthThoughSomePostMuchMore() {
    for (int members : new int[] {5, 12, 30}) {
      double covered =
          share(
              () -> {
                int[] good = new int[members];
                int[] trials = new int[members];
                for (int i = 0; i < members; i++) {
                  // own chances even from 0.4 to 1: the truth is 0.7
                  double own = random.nextDouble(0.4, 1);
                  trials[i] = i % 4 == 0 ? 20 : 1 + random.nextInt(3);
                  for (int trial = 0; trial < trials[i]; trial++) {
                    good[i] += random.nextDouble() < own ? 1 : 0;
                  }
                }
                return MemberShare.of(good, trials).orElseThrow().interval().contains(0.7);
              });
      assertTrue(covered >= 0.94, members + " members: " + covered);
    }
  }

  private double share(BooleanSupplier trial) {
    int count = 0;
    for (int run = 0; run < RUNS; run++) {
      count += trial.getAsBoolean() ? 1 : 0;
    }
    return (double) count / RUNS;
  }

  /** Log-normal values with median 1. */
  private double[] skewed(int n) {
    double[] values = new double[n];
    for (int i = 0; i < n; i++) {
      values[i] = Math.exp(0.5 * random.nextGaussian());
    }
    return values;
  }
}
