package club.emberwell.laser.safety;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** What is needed is never rounded down: densities, distances. */
public final class Upward {
  /** Figures of a distance. */
  private static final MathContext FIGURES = new MathContext(3, RoundingMode.CEILING);

  /** Dust of binary arithmetic that must not lift a number to the next one. */
  private static final double DUST = 1e-9;

  private Upward() {}

  /** An optical density, to the next tenth. */
  public static double density(double value) {
    return Math.ceil(value * 10 - DUST) / 10;
  }

  /** A distance in m, to three figures. */
  public static double distance(double metres) {
    return new BigDecimal(metres * (1 - DUST)).round(FIGURES).doubleValue();
  }
}
