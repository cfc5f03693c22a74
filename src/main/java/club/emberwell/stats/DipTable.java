package club.emberwell.stats;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Quantiles of the dip of n uniform values; the resource's header says whose. As R's diptest does,
 * sqrt(n) x dip is interpolated between sizes linearly along n, and probabilities between
 * quantiles; beyond the last size its row stands for the limit.
 */
record DipTable(int[] sizes, double[] probabilities, double[][] quantiles) {
  private static final String RESOURCE = "dip-quantiles.csv";
  private static final DipTable STANDARD = read();
  private static final double ROUNDING = 1e-9;

  static DipTable standard() {
    return STANDARD;
  }

  /** Chance of at least this dip; 1 for the smallest there is, 0 beyond all that were simulated. */
  double pValue(int n, double dip) {
    if (n < sizes[0] || dip <= (1 + ROUNDING) / (2.0 * n)) {
      return 1;
    }
    int next = Arrays.binarySearch(sizes, n);
    int above = Math.min(next >= 0 ? next : -next - 1, sizes.length - 1);
    int below = n >= sizes[above] ? above : above - 1;
    double share = above == below ? 0 : (double) (n - sizes[below]) / (sizes[above] - sizes[below]);
    double[] row = new double[probabilities.length];
    for (int i = 0; i < row.length; i++) {
      row[i] = (1 - share) * scaled(below, i) + share * scaled(above, i);
    }
    return 1 - cumulated(row, Math.sqrt(n) * dip);
  }

  private double scaled(int size, int i) {
    return Math.sqrt(sizes[size]) * quantiles[size][i];
  }

  private double cumulated(double[] row, double sought) {
    int last = row.length - 1;
    if (sought >= row[last]) {
      return 1;
    }
    int i = 0;
    while (row[i] <= sought) {
      i++;
    }
    if (i == 0) {
      return 0;
    }
    double share = (sought - row[i - 1]) / (row[i] - row[i - 1]);
    return probabilities[i - 1] + share * (probabilities[i] - probabilities[i - 1]);
  }

  private static DipTable read() {
    try (InputStream in = DipTable.class.getResourceAsStream(RESOURCE);
        BufferedReader reader =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      List<double[]> rows =
          reader
              .lines()
              .filter(line -> !line.startsWith("#"))
              .map(line -> line.replaceFirst("^n,", "0,"))
              .map(line -> Arrays.stream(line.split(",")).mapToDouble(Double::parseDouble))
              .map(DoubleStream::toArray)
              .toList();
      List<double[]> body = rows.subList(1, rows.size());
      return new DipTable(
          body.stream().mapToInt(row -> (int) row[0]).toArray(),
          rest(rows.get(0)),
          body.stream().map(DipTable::rest).toArray(double[][]::new));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static double[] rest(double[] row) {
    return Arrays.copyOfRange(row, 1, row.length);
  }
}
