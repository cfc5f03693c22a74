package club.emberwell.stats;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Writes {@code src/main/resources/club/emberwell/stats/dip-quantiles.csv}; run by hand, with the
 * path as the only argument, when {@link DipTest} changes. The seed of a row is its n.
 */
final class DipTableGenerator {
  private static final int[] SIZES = {
    4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 18, 20, 25, 30, 40, 50, 72, 100, 140, 200, 300,
    500, 1000, 2000
  };
  private static final double[] PROBABILITIES = {
    0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75,
    0.8, 0.85, 0.9, 0.92, 0.94, 0.95, 0.96, 0.97, 0.98, 0.985, 0.99, 0.993, 0.995, 0.997, 0.998,
    0.999, 0.9995, 0.9999
  };
  private static final int SMALL = 200;
  private static final int RUNS = 400_000;
  private static final int RUNS_LARGE = 150_000;

  private DipTableGenerator() {}

  public static void main(String[] args) throws IOException {
    List<String> lines = new ArrayList<>();
    lines.add("# sqrt(n) x dip of n uniform values: quantiles; made by DipTableGenerator");
    lines.add("# " + RUNS + " runs up to n = " + SMALL + ", " + RUNS_LARGE + " above; seed n");
    StringBuilder head = new StringBuilder("n");
    for (double p : PROBABILITIES) {
      head.append(',').append(p);
    }
    lines.add(head.toString());
    for (int n : SIZES) {
      lines.add(row(n));
    }
    Files.write(Path.of(args[0]), lines);
  }

  private static String row(int n) {
    int runs = n <= SMALL ? RUNS : RUNS_LARGE;
    SplittableRandom random = new SplittableRandom(n);
    double[] dips = new double[runs];
    double[] values = new double[n];
    for (int run = 0; run < runs; run++) {
      for (int i = 0; i < n; i++) {
        values[i] = random.nextDouble();
      }
      Arrays.sort(values);
      dips[run] = Math.sqrt(n) * DipTest.dip(values);
    }
    StringBuilder line = new StringBuilder().append(n);
    for (double quantile : Quantiles.describe(dips, PROBABILITIES)) {
      line.append(String.format(Locale.ROOT, ",%.6f", quantile));
    }
    return line.toString();
  }
}
