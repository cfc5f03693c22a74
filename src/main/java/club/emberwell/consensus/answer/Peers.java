package club.emberwell.consensus.answer;

import club.emberwell.consensus.dose.Dosed;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.VoiceSet;
import club.emberwell.search.Closeness;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/** One right trial of each member: the one that says most for a purpose. */
final class Peers {
  /** Machines within this factor of the nearest are as good as it (own rule, no source). */
  private static final double SAME_MACHINE = 1.5;

  /** Doses within this factor of each other are as good (own rule, no source). */
  private static final double SAME_DOSE = 1.25;

  /** From this quality a right trial is preferred. */
  private static final int GOOD = 4;

  private static final double MACHINE_WEIGHT = 1_000_000;
  private static final double DOSE_WEIGHT = 1_000;
  private static final double QUALITY_WEIGHT = 100;
  private static final double REST_WEIGHT = 10;

  private Peers() {}

  /** For each voice the right trial nearest to it, those nearest to the middle of all first. */
  static List<Whole> typical(Group group, Spread dose) {
    VoiceSet voices = dose.voices();
    Dosed dosed = Dosed.of(group, dose);
    int[] best =
        best(
            dosed,
            voices.members(),
            i -> {
              int voice = Arrays.binarySearch(voices.members(), dosed.member(i));
              return voice < 0 ? Double.NaN : far(dosed.doses()[i], voices.values()[voice]);
            });
    double[] found = Arrays.stream(best).mapToDouble(i -> dosed.doses()[i]).sorted().toArray();
    return IntStream.of(best)
        .boxed()
        .sorted(Comparator.comparingDouble(i -> far(dosed.doses()[i], found[found.length / 2])))
        .map(i -> Whole.of(group, dosed.rows()[i]))
        .toList();
  }

  /**
   * For each voice the right trial to begin from, the best first: nearest machine, then nearest to
   * a dose, then good quality.
   *
   * @param mine nearness to the reader's machine; empty where there is none
   * @param dose in the middle of all; NaN where none is
   */
  static List<Whole> nearest(Group group, Spread doses, Optional<Closeness> mine, double dose) {
    Dosed dosed = Dosed.of(group, doses);
    IntToDoubleFunction penalty =
        i -> penalty(group, dosed.rows()[i], mine, dose, dosed.doses()[i]);
    double[] scores = new double[dosed.size()];
    Arrays.setAll(scores, i -> dosed.right(i) ? penalty.applyAsDouble(i) : Double.NaN);
    int[] best = best(dosed, doses.voices().members(), i -> scores[i]);
    return IntStream.of(best)
        .boxed()
        .sorted(
            Comparator.comparingDouble((Integer i) -> scores[i])
                .thenComparing(i -> dosed.member(i)))
        .map(i -> Whole.of(group, dosed.rows()[i]))
        .toList();
  }

  private static double penalty(
      Group group, int row, Optional<Closeness> mine, double dose, double own) {
    double apart =
        mine.map(
                laser ->
                    laser.alike(
                        group.columns().values(Measure.RATED_POWER)[row],
                        group.columns().values(Measure.BEAM_DIAMETER)[row],
                        group.code(Property.MOTION, row)))
            .orElse(0.0);
    double off = Double.isNaN(dose) ? 0 : far(own, dose);
    boolean good = group.columns().values(Measure.QUALITY)[row] >= GOOD;
    return MACHINE_WEIGHT * Math.floor(apart / Math.log(SAME_MACHINE))
        + DOSE_WEIGHT * Math.floor(off / Math.log(SAME_DOSE))
        + (good ? 0 : QUALITY_WEIGHT)
        + REST_WEIGHT * (Math.min(off, 4) + Math.min(apart, 4));
  }

  /** The trial with the least score of each member; NaN takes no part, nor who is no voice. */
  private static int[] best(Dosed dosed, long[] members, IntToDoubleFunction score) {
    List<Integer> found = new ArrayList<>();
    int best = -1;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i <= dosed.size(); i++) {
      if (i > 0 && (i == dosed.size() || dosed.member(i) != dosed.member(i - 1))) {
        if (best >= 0 && Arrays.binarySearch(members, dosed.member(best)) >= 0) {
          found.add(best);
        }
        best = -1;
        least = Double.POSITIVE_INFINITY;
      }
      if (i < dosed.size() && dosed.right(i) && score.applyAsDouble(i) < least) {
        best = i;
        least = score.applyAsDouble(i);
      }
    }
    return found.stream().mapToInt(Integer::intValue).toArray();
  }

  private static double far(double dose, double from) {
    return Math.abs(Math.log(dose / from));
  }
}
