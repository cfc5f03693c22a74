package club.emberwell.stats;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.statistics.distribution.TDistribution;

/**
 * How columns stand to each other where they are crossed with rows and most cells are empty: value
 * = row + column + cell + repeat, rows fixed, the rest random. Here rows are works, columns are
 * machines and values ln doses that came out right: whether a machine takes more or less than
 * others in all it does.
 *
 * <p>The effect of a column is its best linear unbiased prediction (Henderson, Biometrics 31 (1975)
 * 423-447; Robinson, Statistical Science 6 (1991) 15-51). The variances come by MacKay's fixed
 * point (Neural Computation 4 (1992) 415-447), each with a weak guess beside it so that none is
 * zero; values whose modified z of what is left over is beyond 3.5 are set aside. All from memory,
 * checked by simulation. Deterministic.
 */
public final class CrossedEffects {
  /** Level of an interval. */
  public static final double LEVEL = 0.95;

  /** Fewest rows a column shares with others before anything is said of it (own rule). */
  public static final int FEWEST = 3;

  private final int[] owners;
  private final CrossedFit fit;

  /** Rows each column shares with columns of other owners. */
  private final int[] shared;

  /** Columns that stand in such a row. */
  private final int[] compared;

  private CrossedEffects(Values values) {
    owners = values.owners();
    CrossedCells cells = CrossedCells.of(values);
    fit = CrossedFit.of(cells);
    shared = new int[owners.length];
    for (int[] row : CrossedCells.groups(cells.row(), cells.rows())) {
      int[] columns = IntStream.of(row).map(cell -> cells.column()[cell]).toArray();
      if (IntStream.of(columns).map(column -> owners[column]).distinct().count() > 1) {
        IntStream.of(columns).forEach(column -> shared[column]++);
      }
    }
    compared = IntStream.range(0, shared.length).filter(column -> shared[column] > 0).toArray();
  }

  /**
   * The values.
   *
   * @param owners one for each column: columns of one owner are no others to each other
   * @param rows 0, 1, 2, ... for each value
   * @param columns the same
   * @param logs natural logarithms
   */
  public record Values(int[] owners, int[] rows, int[] columns, double[] logs) {
    public Values {
      Checked.sameLength(rows.length, logs.length);
      Checked.sameLength(columns.length, logs.length);
      Checked.finite(logs);
    }

    int rowCount() {
      return Arrays.stream(rows).max().orElse(-1) + 1;
    }

    int columnCount() {
      return owners.length;
    }

    Values only(int[] kept) {
      return new Values(
          owners,
          IntStream.of(kept).map(i -> rows[i]).toArray(),
          IntStream.of(kept).map(i -> columns[i]).toArray(),
          IntStream.of(kept).mapToDouble(i -> logs[i]).toArray());
    }
  }

  /**
   * How a column stands to the mean of those of other owners, natural logarithms.
   *
   * @param interval 95 %, t
   * @param rows shared with others
   */
  public record Against(double effect, Interval interval, int rows) {}

  public static CrossedEffects of(Values values) {
    return new CrossedEffects(values);
  }

  /** Empty where it shares fewer than {@link #FEWEST} rows with others. */
  public Optional<Against> against(int column) {
    int[] others =
        IntStream.of(compared).filter(other -> owners[other] != owners[column]).toArray();
    if (shared[column] < FEWEST || others.length == 0) {
      return Optional.empty();
    }
    double n = others.length;
    double effect = effect(column) - IntStream.of(others).mapToDouble(this::effect).sum() / n;
    double variance = fit.error(column, column);
    for (int other : others) {
      variance -= 2 * fit.error(column, other) / n;
      for (int another : others) {
        variance += fit.error(other, another) / n / n;
      }
    }
    double degrees = shared[column] + n - 1;
    double reach =
        Math.sqrt(variance) * TDistribution.of(degrees).inverseSurvivalProbability((1 - LEVEL) / 2);
    return Optional.of(
        new Against(effect, new Interval(effect - reach, effect + reach, LEVEL), shared[column]));
  }

  /** How far a column lies from all of them together; 0 where nothing is known of it. */
  public double effect(int column) {
    return fit.effects()[column];
  }

  /** Standard deviation of the columns. */
  public double between() {
    return Math.sqrt(fit.between());
  }

  /** Standard deviation of a cell beside its row and column. */
  public double interaction() {
    return Math.sqrt(fit.interaction());
  }
}
