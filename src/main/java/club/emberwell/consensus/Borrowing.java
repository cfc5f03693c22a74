package club.emberwell.consensus;

import club.emberwell.catalog.ThicknessClass;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Figures;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.VoiceSet;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Interval;
import club.emberwell.stats.Quantiles;
import club.emberwell.stats.RandomEffects;
import club.emberwell.stats.Shrinkage;
import club.emberwell.stats.Summary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A second line beside too few voices: the own dose drawn toward that of its relatives ({@link
 * Shrinkage} on ln dose).
 *
 * @param measure the dose it is in, canonical unit
 * @param lenders whose voices are borrowed
 * @param voices own voices
 * @param own median of the own voices; empty where there is none
 * @param value with what is borrowed in it
 * @param interval 95 %, normal
 * @param weightOnOwn 0 to 1: the rest is borrowed
 */
public record Borrowing(
    Measure measure,
    Lenders lenders,
    int voices,
    Optional<Double> own,
    double value,
    Interval interval,
    double weightOnOwn) {
  private static final double LEVEL = 0.95;
  private static final double NORMAL =
      NormalDistribution.of(0, 1).inverseSurvivalProbability((1 - LEVEL) / 2);

  /**
   * Whose voices are borrowed.
   *
   * @param words who they are
   * @param by the property they differ in
   * @param relatives how many there are
   * @param members behind them
   */
  public record Lenders(String words, Facet by, int relatives, int members) {}

  /** Ln doses of the voices of one relative. */
  private record Relative(long[] members, double[] logs) {
    static Relative of(Group group, Facet by) {
      Measure measure = Range.doseMeasure(group.key());
      VoiceSet voices = Spread.of(group, measure).voices();
      double shift = Math.log(scale(group.key(), by));
      int[] kept = IntStream.range(0, voices.size()).filter(i -> voices.values()[i] > 0).toArray();
      return new Relative(
          IntStream.of(kept).mapToLong(i -> voices.members()[i]).toArray(),
          IntStream.of(kept).mapToDouble(i -> Math.log(voices.values()[i]) - shift).toArray());
    }

    boolean isEmpty() {
      return logs.length == 0;
    }
  }

  /**
   * @param own the group with too few voices; empty where nobody did exactly this
   * @param key what is borrowed for
   * @param lenders works that differ from it in one part only
   */
  static Optional<Borrowing> of(
      Optional<Group> own, RangeKey key, List<Group> lenders, Facet by, String from) {
    if (by == Facet.THICKNESS && nominalMm(key).isEmpty()) {
      return Optional.empty();
    }
    double[] logs = own.map(group -> Relative.of(group, by).logs()).orElse(new double[0]);
    List<Relative> relatives =
        lenders.stream()
            .filter(group -> by != Facet.THICKNESS || nominalMm(group.key()).isPresent())
            .map(group -> Relative.of(group, by))
            .filter(relative -> !relative.isEmpty())
            .toList();
    List<double[]> samples = new ArrayList<>(relatives.stream().map(Relative::logs).toList());
    samples.add(logs);
    int repeats = samples.stream().mapToInt(s -> Math.max(0, s.length - 1)).sum();
    if (relatives.size() < ConsensusLimits.FEWEST_SIBLINGS
        || repeats < ConsensusLimits.FEWEST_REPEATS) {
      return Optional.empty();
    }
    double within = samples.stream().mapToDouble(Borrowing::squares).sum() / repeats;
    if (!(within > 0)) {
      return Optional.empty();
    }
    Set<Long> members = new TreeSet<>();
    relatives.forEach(relative -> LongStream.of(relative.members()).forEach(members::add));
    return Optional.of(
        drawn(
            key,
            new Lenders(from, by, relatives.size(), members.size()),
            parent(relatives, within),
            logs,
            within));
  }

  private static Borrowing drawn(
      RangeKey key, Lenders lenders, RandomEffects parent, double[] logs, double within) {
    int n = logs.length;
    double middle = n == 0 ? Double.NaN : Quantiles.median(logs);
    // nobody did this: a relative like the others, somewhere among them
    Shrinkage drawn =
        n == 0
            ? new Shrinkage(parent.mean(), Math.hypot(parent.error(), Math.sqrt(parent.tau2())), 0)
            : Shrinkage.of(middle, within / n, parent);
    double reach = NORMAL * drawn.error();
    double scale = scale(key, lenders.by());
    Interval interval = new Interval(drawn.value() - reach, drawn.value() + reach, LEVEL).exp();
    return new Borrowing(
        Range.doseMeasure(key),
        lenders,
        n,
        n == 0 ? Optional.empty() : Optional.of(scale * Math.exp(middle)),
        scale * Math.exp(drawn.value()),
        interval.times(scale),
        drawn.weightOnOwn());
  }

  /**
   * What doses are divided by before relatives are compared: thicknesses meet in line dose per
   * thickness (severance energy P / (v t), J/mm2: Powell, CO2 Laser Cutting, from memory).
   */
  private static double scale(RangeKey key, Facet by) {
    return by == Facet.THICKNESS ? nominalMm(key).orElseThrow() : 1;
  }

  /** Empty of a class that is open to one side: it has no thickness to go by. */
  private static Optional<Double> nominalMm(RangeKey key) {
    return key.work()
        .part(Facet.THICKNESS)
        .flatMap(part -> ThicknessClass.of(part.value()))
        .map(ThicknessClass::nominalMm);
  }

  private static RandomEffects parent(List<Relative> relatives, double within) {
    double[] means = relatives.stream().mapToDouble(r -> Summary.mean(r.logs())).toArray();
    double[] variances = relatives.stream().mapToDouble(r -> within / r.logs().length).toArray();
    return RandomEffects.of(means, variances).orElseThrow();
  }

  private static double squares(double[] logs) {
    double mean = Arrays.stream(logs).average().orElse(0);
    return Arrays.stream(logs).map(x -> (x - mean) * (x - mean)).sum();
  }

  /** How much is borrowed, in words. */
  public String sentence() {
    String much =
        voices == 0
            ? "Borrowed entirely from "
            : Figures.percent(1 - weightOnOwn) + " borrowed from ";
    return much
        + lenders.words()
        + ": "
        + lenders.members()
        + " members on "
        + lenders.relatives()
        + " works like it.";
  }
}
