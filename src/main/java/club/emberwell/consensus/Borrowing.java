package club.emberwell.consensus;

import club.emberwell.consensus.dose.Dosed;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Figures;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.VoiceSet;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import club.emberwell.stats.Interval;
import club.emberwell.stats.Quantiles;
import club.emberwell.stats.RandomEffects;
import club.emberwell.stats.Shrinkage;
import club.emberwell.stats.Summary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * A second line beside too few voices: the own dose drawn toward that of its relatives ({@link
 * Shrinkage} on ln dose). It never replaces the own value.
 *
 * @param measure the dose it is in, canonical unit
 * @param lenders whose voices are borrowed
 * @param voices own voices
 * @param own geometric mean of the own voices; empty where there is none
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
  public record Lenders(String words, Property by, int relatives, int members) {}

  /** Ln doses of the voices of one relative, by member. */
  private record Relative(Map<Long, Double> voices) {
    double[] logs() {
      return voices.values().stream().mapToDouble(x -> x).toArray();
    }

    double mean() {
      return Summary.mean(logs());
    }
  }

  /**
   * @param own the group with too few voices; empty where nobody did exactly this
   * @param wider the group of the wider query with the same key
   */
  static Optional<Borrowing> of(Optional<Group> own, Group wider, Property by, String from) {
    Measure measure = Range.doseMeasure(wider.key());
    double[] logs = own.map(group -> own(group, measure)).orElse(new double[0]);
    Set<Long> reports =
        own.map(
                group ->
                    Arrays.stream(group.rows())
                        .mapToObj(row -> group.columns().report()[row])
                        .collect(Collectors.toSet()))
            .orElse(Set.of());
    List<Relative> relatives = relatives(wider, by, reports);
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
    RandomEffects parent = parent(relatives, within);
    Set<Long> members = new TreeSet<>();
    relatives.forEach(relative -> members.addAll(relative.voices().keySet()));
    return Optional.of(
        drawn(
            measure,
            new Lenders(from, by, relatives.size(), members.size()),
            parent,
            logs,
            within));
  }

  private static Borrowing drawn(
      Measure measure, Lenders lenders, RandomEffects parent, double[] logs, double within) {
    int n = logs.length;
    double mean = n == 0 ? Double.NaN : Arrays.stream(logs).average().orElseThrow();
    // nobody did this: a relative like the others, somewhere among them
    Shrinkage drawn =
        n == 0
            ? new Shrinkage(parent.mean(), Math.hypot(parent.error(), Math.sqrt(parent.tau2())), 0)
            : Shrinkage.of(mean, within / n, parent);
    double reach = NORMAL * drawn.error();
    Interval interval = new Interval(drawn.value() - reach, drawn.value() + reach, LEVEL).exp();
    return new Borrowing(
        measure,
        lenders,
        n,
        n == 0 ? Optional.empty() : Optional.of(Math.exp(mean)),
        Math.exp(drawn.value()),
        interval,
        drawn.weightOnOwn());
  }

  private static double[] own(Group group, Measure measure) {
    VoiceSet voices = Spread.of(VoiceSet.of(group, measure)).voices();
    return Arrays.stream(voices.values()).filter(v -> v > 0).map(Math::log).toArray();
  }

  private static RandomEffects parent(List<Relative> relatives, double within) {
    double[] means = relatives.stream().mapToDouble(Relative::mean).toArray();
    double[] variances =
        relatives.stream().mapToDouble(relative -> within / relative.voices().size()).toArray();
    return RandomEffects.of(means, variances).orElseThrow();
  }

  private static double squares(double[] logs) {
    double mean = Arrays.stream(logs).average().orElse(0);
    return Arrays.stream(logs).map(x -> (x - mean) * (x - mean)).sum();
  }

  private static List<Relative> relatives(Group wider, Property by, Set<Long> without) {
    Dosed dosed = Dosed.of(wider);
    Map<Integer, Map<Long, List<Double>>> found = new TreeMap<>();
    for (int i = 0; i < dosed.size(); i++) {
      int row = dosed.rows()[i];
      int code = wider.code(by, row);
      if (code >= 0 && dosed.right(i) && !without.contains(wider.columns().report()[row])) {
        found
            .computeIfAbsent(code, key -> new HashMap<>())
            .computeIfAbsent(dosed.member(i), key -> new ArrayList<>())
            .add(Math.log(dosed.doses()[i]));
      }
    }
    return found.values().stream()
        .map(
            byMember -> {
              Map<Long, Double> voices = new TreeMap<>();
              byMember.forEach((member, logs) -> voices.put(member, Quantiles.median(logs)));
              return new Relative(voices);
            })
        .toList();
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
        + " others like it. This does not replace what was found here.";
  }
}
