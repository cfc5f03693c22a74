package club.emberwell.stats;

import java.util.Optional;

/**
 * One edge of a {@link DoseWindow}: the dose at which, for a typical member, two neighbouring
 * grades are equally likely.
 *
 * @param kind how well it is known
 * @param dose NaN unless told or rough
 * @param range 95 % interval of {@code dose}; present where it is told or rough
 * @param next the dose whose trial would tell most; present where it is not known
 */
public record DoseLimit(Kind kind, double dose, Optional<Interval> range, Optional<Double> next) {

  /** Fewest members of which an edge is told in words. */
  public static final int FEWEST_TOLD = 8;

  /** Most times that the interval of an edge told in words spans. */
  public static final double WIDEST_TOLD = 3;

  static final DoseLimit NOT_TRIED =
      new DoseLimit(Kind.NOT_TRIED, Double.NaN, Optional.empty(), Optional.empty());

  /** How well an edge is known. */
  public enum Kind {
    /** From 8 members, and its interval spans at most a factor of 3: can be said in words. */
    TOLD,
    /** Fitted, but not well enough for that: drawn as a fading end. */
    ROUGH,
    /** No rising fit with an interval, or too few trials beyond it. */
    NOT_KNOWN,
    /** No trial on its far side. */
    NOT_TRIED
  }

  static DoseLimit known(double dose, Interval range, int members) {
    boolean told = members >= FEWEST_TOLD && range.ratio() <= WIDEST_TOLD;
    return new DoseLimit(told ? Kind.TOLD : Kind.ROUGH, dose, Optional.of(range), Optional.empty());
  }

  static DoseLimit notKnown(double next) {
    return new DoseLimit(
        Kind.NOT_KNOWN, Double.NaN, Optional.empty(), Optional.of(next).filter(Double::isFinite));
  }

  /** Whether it has a dose, be it rough. */
  public boolean fitted() {
    return kind == Kind.TOLD || kind == Kind.ROUGH;
  }
}
