package club.emberwell.laser;

/**
 * How the light comes.
 *
 * @param gated true where a cw source is dimmed by pulse-width modulation
 */
public record Emission(Regime regime, boolean gated) {
  /** Not gated. */
  public static Emission of(Regime regime) {
    return new Emission(regime, false);
  }
}
