package club.emberwell.laser;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Compares a computed number with a published one to the last digit that was printed. */
public final class Printed {
  private Printed() {}

  public static void assertPrinted(String printed, double computed) {
    BigDecimal expected = new BigDecimal(printed);
    assertEquals(
        expected,
        new BigDecimal(computed).setScale(expected.scale(), RoundingMode.HALF_UP),
        () -> "printed " + printed + ", computed " + computed);
  }
}
