package club.emberwell.grid.plan;

import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.Start;
import club.emberwell.consensus.answer.Whole;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.laser.Settings;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.Interval;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * What members' results say of the doses to test on one machine.
 *
 * @param doses to cover, with the chance that the best one of one more member is among them; empty
 *     where nothing is known
 * @param window of the others' machines
 * @param factor how many times the dose of others this machine takes; 1 = not known
 * @param start whole settings to begin with
 */
record Known(
    Cover.Basis basis,
    Optional<Interval> doses,
    Optional<Window> window,
    double factor,
    Optional<Settings> start) {
  static final Known NOTHING =
      new Known(Cover.Basis.BY_HAND, Optional.empty(), Optional.empty(), 1, Optional.empty());

  /** Round one dose alone: from half to one and a half times (own rule, no source). */
  private static final double BELOW = 0.5;

  private static final double ABOVE = 1.5;

  /** Spans at least so many times, so that a grid has two ends, and at most so many. */
  private static final double NARROWEST = 1.5;

  private static final double WIDEST = 40;

  static Known of(RangeDetail detail) {
    double factor = detail.answer().flatMap(Answer::factor).map(OnThisWork::times).orElse(1.0);
    Optional<Window> window = detail.findings().map(RangeDetail.Findings::window);
    boolean borrowed = detail.borrowing().isPresent() && detail.range().counts().voices() == 0;
    return new Known(
        borrowed ? Cover.Basis.BORROWED : Cover.Basis.RANGE,
        doses(detail, window).map(Known::sensible).map(doses -> doses.times(factor)),
        window,
        factor,
        start(detail));
  }

  /** The chance of right at a dose on this machine; empty where it is not known. */
  Optional<Double> chance(double dose) {
    return window.flatMap(found -> found.chance(dose / factor));
  }

  /** From the lower of band and window to the higher, else round the one dose that is known. */
  private static Optional<Interval> doses(RangeDetail detail, Optional<Window> window) {
    Optional<Interval> band = detail.range().dose().nextMember().filter(found -> found.low() > 0);
    double[] ends =
        Stream.concat(
                band.stream().flatMap(found -> Stream.of(found.low(), found.high())),
                window.stream().flatMap(Known::edges))
            .mapToDouble(Double::doubleValue)
            .toArray();
    if (ends.length >= 2) {
      double inside = band.map(Interval::coverage).orElse(Double.NaN);
      return Optional.of(
          new Interval(
              DoubleStream.of(ends).min().orElseThrow(),
              DoubleStream.of(ends).max().orElseThrow(),
              inside));
    }
    return one(detail).map(dose -> new Interval(dose * BELOW, dose * ABOVE, Double.NaN));
  }

  private static Stream<Double> edges(Window window) {
    return Stream.of(window.lower(), window.upper()).filter(DoseLimit::fitted).map(DoseLimit::dose);
  }

  private static Optional<Double> one(RangeDetail detail) {
    return detail
        .middle()
        .map(RangeDetail.Middle::dose)
        .or(() -> detail.answer().flatMap(Answer::start).map(Start::dose))
        .or(() -> detail.answer().flatMap(Known::nearest).map(Whole::dose))
        .filter(dose -> dose > 0);
  }

  private static Interval sensible(Interval doses) {
    double middle = Math.sqrt(doses.low() * doses.high());
    double half = Math.sqrt(Math.min(WIDEST, Math.max(NARROWEST, doses.ratio())));
    boolean kept = doses.ratio() >= NARROWEST && doses.ratio() <= WIDEST;
    return kept ? doses : new Interval(middle / half, middle * half, doses.coverage());
  }

  private static Optional<Settings> start(RangeDetail detail) {
    return detail
        .answer()
        .flatMap(
            answer ->
                answer.start().map(Start::settings).or(() -> nearest(answer).map(Whole::settings)));
  }

  private static Optional<Whole> nearest(Answer answer) {
    return Stream.concat(answer.right().stream(), answer.wholes().stream())
        .filter(Objects::nonNull)
        .findFirst();
  }

  /** The chance that its best dose is among those covered; null = not known. */
  Double inside() {
    return doses.map(Interval::coverage).filter(chance -> !chance.isNaN()).orElse(null);
  }
}
