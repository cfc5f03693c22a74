package club.emberwell.consensus.answer;

import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.factor.OnThisWork;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Laser;
import club.emberwell.laser.Process;
import club.emberwell.search.Closeness;
import club.emberwell.stats.Interval;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the trials of one work come to for one reader.
 *
 * @param start empty without a machine, and where nothing may be carried over to it
 * @param refusal why nothing may be carried over, in sentences; else empty
 * @param wholes right trials of different other members, those of machines like the reader's first
 * @param right the reader's own right trial on this machine that lies nearest to the middle
 * @param next what to try after own trials that failed
 * @param factor how the reader's machine stands to others, where it did not do this work right yet
 */
public record Answer(
    Optional<Start> start,
    List<String> refusal,
    List<Whole> wholes,
    Optional<Whole> right,
    Optional<Next> next,
    Optional<OnThisWork> factor) {
  /** Whole settings of others that are shown. */
  public static final int WHOLES = 3;

  /**
   * @param group of the work itself, or its relatives where nobody did exactly this
   * @param range of the group
   */
  public static Answer of(
      Group group, Range range, Target target, Optional<Window> window, Reader reader) {
    return of(group, range, target, window, reader, Optional.empty());
  }

  /**
   * The same for a machine that is known from other works.
   *
   * @param factor what that makes of this work
   */
  public static Answer of(
      Group group,
      Range range,
      Target all,
      Optional<Window> window,
      Reader reader,
      Optional<OnThisWork> factor) {
    Target target = factor.map(all::on).orElse(all);
    Optional<Laser> mine = Optional.ofNullable(reader.laser());
    double middle = target.dose().orElse(Double.NaN);
    List<Whole> nearest = Peers.nearest(group, range.dose(), mine.map(Closeness::new), middle);
    List<Whole> own = Next.trials(group, reader.machine());
    Process process = group.key().process();
    Starting.Found found =
        mine.map(laser -> new Starting(laser, process, target).among(nearest))
            .orElse(new Starting.Found(Optional.empty(), List.of()));
    return new Answer(
        found.start(),
        found.refusal(),
        nearest.stream()
            .filter(whole -> whole.made().member() != reader.member())
            .limit(WHOLES)
            .toList(),
        right(own, middle),
        target.basis() == Start.Basis.BORROWED
            ? Optional.empty()
            : mine.flatMap(
                laser ->
                    Next.of(
                        own,
                        laser,
                        process,
                        new Next.Known(
                            target.dose(),
                            right(range, window)
                                .map(i -> factor.map(f -> i.times(f.times())).orElse(i))))),
        factor);
  }

  private static Optional<Whole> right(List<Whole> own, double middle) {
    return own.stream()
        .filter(trial -> trial.effect() == Effect.RIGHT)
        .min(Comparator.comparingDouble(trial -> Math.abs(Math.log(trial.dose() / middle))));
  }

  /** The window where both its edges are known, else where the next member would be. */
  private static Optional<Interval> right(Range range, Optional<Window> window) {
    return window
        .filter(w -> w.lower().fitted() && w.upper().fitted())
        .filter(w -> w.lower().dose() < w.upper().dose())
        .map(w -> new Interval(w.lower().dose(), w.upper().dose(), Double.NaN))
        .or(() -> range.dose().nextMember());
  }
}
