package club.emberwell.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * Reads the cells of {@code src/test/resources/reference/statistics} and compares with them. The
 * files were made with R 4.2.2; each header names the call and the published source. Checked where:
 *
 * <ul>
 *   <li>quantile_hyndman_fan, summary, nist_strd_univariate_*: {@code DescriptionTest}
 *   <li>median_ci, median_ci_ranks, next_member_interval_ranks: {@code OrderStatisticTest}
 *   <li>binomial_ci, member_share_wilson: {@code ShareTest}
 *   <li>mad_modified_z: {@code ModifiedZTest}
 *   <li>logistic_dose, firth_endometrial_*: {@code LogisticTest}
 *   <li>random_effects, shrinkage_blup: {@code RandomEffectsTest}
 *   <li>dip_test: {@code DipTestTest}
 *   <li>order_size: {@code OrderSizeTest}
 * </ul>
 */
final class CheckValues {
  /** Relative, for closed forms. */
  static final double CLOSED_FORM = 1e-12;

  private CheckValues() {}

  /** A vector cell; an empty or NA element is NaN. */
  static double[] vector(String cell) {
    if (cell == null || cell.isEmpty()) {
      return new double[0];
    }
    return Arrays.stream(cell.split(";", -1)).mapToDouble(CheckValues::number).toArray();
  }

  /** A number cell; empty or NA is NaN. */
  static double number(String cell) {
    return cell == null || cell.isEmpty() || cell.equals("NA")
        ? Double.NaN
        : Double.parseDouble(cell);
  }

  static int[] integers(String cell) {
    return Arrays.stream(cell.split(";")).mapToInt(Integer::parseInt).toArray();
  }

  /** The data rows of a file whose cells hold no quotes: neither comments nor the header. */
  static List<String[]> rows(String file) {
    String path = "/reference/statistics/" + file;
    try (InputStream in = CheckValues.class.getResourceAsStream(path)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .skip(1)
          .map(line -> line.split(",", -1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Equal within {@code tolerance} of the larger of 1 and the expected value. */
  static void assertClose(double expected, double actual, double tolerance, String what) {
    if (Double.isNaN(expected)) {
      assertEquals(expected, actual, what);
      return;
    }
    assertEquals(expected, actual, tolerance * Math.max(1, Math.abs(expected)), what);
  }

  static void assertClose(double[] expected, double[] actual, double tolerance, String what) {
    assertEquals(expected.length, actual.length, what);
    for (int i = 0; i < expected.length; i++) {
      assertClose(expected[i], actual[i], tolerance, what + " [" + i + "]");
    }
  }
}
