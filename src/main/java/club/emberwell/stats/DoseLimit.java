package club.emberwell.stats;

import java.util.Optional;

/**
 * One side of a {@link DoseWindow}: the dose between two neighbouring grades.
 *
 * @param kind what is known of it
 * @param dose where the chance of the higher grade is one half; NaN unless fitted
 * @param range where the grades overlap, the 95 % interval of {@code dose}; where they do not, the
 *     gap from the highest dose of the lower grade to the lowest of the higher; empty if unknown
 * @param curve chance of the higher grade over (1, ln dose); for a gap its place is one of many
 */
public record DoseLimit(
    Kind kind, double dose, Optional<Interval> range, Optional<FirthLogit.Fit> curve) {

  static final DoseLimit UNKNOWN =
      new DoseLimit(Kind.UNKNOWN, Double.NaN, Optional.empty(), Optional.empty());

  /** What is known of a limit. */
  public enum Kind {
    /** Only one of the two grades was reported. */
    UNKNOWN,
    /** The grades do not overlap: the limit lies somewhere in the gap. */
    GAP,
    /** The grades overlap: a dose with its interval. */
    FITTED
  }

  /**
   * The limit between trials that reached a grade and trials that did not.
   *
   * @param doses positive, not all equal
   * @param reached as many
   * @param weights as many
   * @param widening factor on the standard error
   */
  static DoseLimit of(double[] doses, boolean[] reached, double[] weights, double widening) {
    double highestBelow = Double.NEGATIVE_INFINITY;
    double lowestReached = Double.POSITIVE_INFINITY;
    double[] successes = new double[doses.length];
    for (int i = 0; i < doses.length; i++) {
      if (reached[i]) {
        successes[i] = weights[i];
        lowestReached = Math.min(lowestReached, doses[i]);
      } else {
        highestBelow = Math.max(highestBelow, doses[i]);
      }
    }
    if (Double.isInfinite(highestBelow) || Double.isInfinite(lowestReached)) {
      return UNKNOWN;
    }
    Optional<FirthLogit.Fit> curve = FirthLogit.fit(Checked.logs(doses), successes, weights);
    if (highestBelow < lowestReached) {
      Interval gap = new Interval(highestBelow, lowestReached, Double.NaN);
      return new DoseLimit(Kind.GAP, Double.NaN, Optional.of(gap), curve);
    }
    return curve.map(fit -> fitted(fit, widening)).orElse(UNKNOWN);
  }

  private static DoseLimit fitted(FirthLogit.Fit fit, double widening) {
    Optional<FirthLogit.Fit> curve = Optional.of(fit);
    Optional<FirthLogit.Half> half = fit.half().filter(place -> fit.coefficients()[1] > 0);
    if (half.isEmpty()) {
      return new DoseLimit(Kind.FITTED, Double.NaN, Optional.empty(), curve);
    }
    double x = half.get().x();
    double reach = BinomialInterval.z(DoseWindow.LEVEL) * half.get().error() * widening;
    Interval range = new Interval(x - reach, x + reach, DoseWindow.LEVEL).exp();
    return new DoseLimit(Kind.FITTED, Math.exp(x), Optional.of(range), curve);
  }

  /** Whether the higher grade does not become likelier with the dose. */
  boolean falling() {
    return curve.isPresent() && !(curve.get().coefficients()[1] > 0);
  }
}
