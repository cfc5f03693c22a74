package club.emberwell.consensus;

import club.emberwell.consensus.dose.Dosed;
import club.emberwell.consensus.range.ConsensusLimits;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Recorded;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Property;
import club.emberwell.stats.Holm;
import club.emberwell.stats.Interval;
import club.emberwell.stats.ModifiedZ;
import club.emberwell.stats.Ratio;
import club.emberwell.stats.Summary;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntUnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Compares the values of one property by the dose that came out right. Members who did both are
 * compared with themselves, and only on the same material, so that nothing else is compared by the
 * way; below three such members different members are compared.
 */
final class Contrasts {
  /** The same material of one member; left out (-1) where materials are compared. */
  private record Cell(long member, int material) {}

  private record Pair(Property property, String a, String b, Ratio ratio) {}

  private Contrasts() {}

  /**
   * All contrasts, the clearest first.
   *
   * @param relatives works that differ from the group in one part, by that part
   */
  static List<Contrast> of(Group group, Map<Facet, List<Group>> relatives) {
    List<Pair> pairs = new ArrayList<>();
    relatives.forEach((facet, others) -> pairs.addAll(besideRelatives(group, facet, others)));
    Dosed dosed = Dosed.of(group);
    for (Property property : Recorded.CONTRASTED) {
      pairs.addAll(pairs(values(dosed, property), group, property));
    }
    double[] adjusted = Holm.adjust(pairs.stream().mapToDouble(p -> p.ratio().pValue()).toArray());
    List<Contrast> contrasts = new ArrayList<>();
    for (int i = 0; i < adjusted.length; i++) {
      // corrected for all that were tried, told only where it says something
      if (pairs.get(i).ratio().interval().ratio() <= ConsensusLimits.WIDEST_RATIO) {
        contrasts.add(contrast(pairs.get(i), adjusted[i]));
      }
    }
    contrasts.sort(
        Comparator.comparingDouble(Contrast::adjusted)
            .thenComparing(Comparator.comparingInt((Contrast c) -> c.ratio().n()).reversed()));
    return List.copyOf(contrasts);
  }

  private static Contrast contrast(Pair pair, double adjusted) {
    Ratio r = pair.ratio();
    if (r.ratio() >= 1) {
      return new Contrast(pair.property(), pair.a(), pair.b(), r, adjusted);
    }
    Interval i = r.interval();
    Interval turned = new Interval(1 / i.high(), 1 / i.low(), i.coverage());
    Ratio other = new Ratio(r.kind(), r.n(), 1 / r.ratio(), turned, r.degrees(), r.pValue());
    return new Contrast(pair.property(), pair.b(), pair.a(), other, adjusted);
  }

  /** The group's own value against those of its relatives with most members. */
  private static List<Pair> besideRelatives(Group group, Facet facet, List<Group> others) {
    Property property = Property.of(facet.code());
    Map<Cell, Double> own = cells(group, property);
    String usual = part(group, facet);
    return others.stream()
        .limit(ConsensusLimits.CONTRASTED)
        .flatMap(
            other ->
                ratio(cells(other, property), own)
                    .map(ratio -> new Pair(property, part(other, facet), usual, ratio))
                    .stream())
        .toList();
  }

  private static String part(Group group, Facet facet) {
    return group.key().work().part(facet).orElseThrow().label();
  }

  private static List<Pair> pairs(
      Map<Integer, Map<Cell, Double>> values, Group group, Property property) {
    List<Integer> codes =
        values.keySet().stream()
            .sorted(
                Comparator.comparingInt((Integer code) -> members(values.get(code)).size())
                    .reversed()
                    .thenComparing(Comparator.naturalOrder()))
            .limit(ConsensusLimits.CONTRASTED + 1L)
            .toList();
    List<Pair> pairs = new ArrayList<>();
    for (int i = 1; i < codes.size(); i++) {
      int other = codes.get(i);
      int usual = codes.get(0);
      ratio(values.get(other), values.get(usual))
          .map(
              ratio ->
                  new Pair(
                      property,
                      label(group, property, other),
                      label(group, property, usual),
                      ratio))
          .ifPresent(pairs::add);
    }
    return pairs;
  }

  private static String label(Group group, Property property, int code) {
    return group.columns().labels().label(property, code);
  }

  /** Median ln dose of each member's right trials, by value of the property. */
  private static Map<Integer, Map<Cell, Double>> values(Dosed dosed, Property property) {
    Map<Integer, Map<Cell, Double>> medians =
        medians(dosed, property, row -> dosed.group().code(property, row));
    medians.values().forEach(Contrasts::dropSuspects);
    return medians;
  }

  /** The same of all trials of a group, which have the value of a part in common. */
  private static Map<Cell, Double> cells(Group group, Property property) {
    Map<Cell, Double> own =
        medians(Dosed.of(group), property, row -> 0).getOrDefault(0, new LinkedHashMap<>());
    dropSuspects(own);
    return own;
  }

  /** A member's trials lie side by side, so that one member at a time is sorted. */
  private static Map<Integer, Map<Cell, Double>> medians(
      Dosed dosed, Property property, IntUnaryOperator value) {
    Map<Integer, Map<Cell, Double>> found = new TreeMap<>();
    int from = 0;
    while (from < dosed.size()) {
      Map<Integer, Map<Cell, List<Double>>> own = new TreeMap<>();
      int to = from;
      for (; to < dosed.size() && dosed.members()[to] == dosed.members()[from]; to++) {
        int code = value.applyAsInt(dosed.rows()[to]);
        if (code >= 0 && dosed.right(to)) {
          own.computeIfAbsent(code, key -> new LinkedHashMap<>())
              .computeIfAbsent(cell(dosed, to, property), key -> new ArrayList<>())
              .add(Math.log(dosed.doses()[to]));
        }
      }
      own.forEach(
          (code, cells) ->
              cells.forEach(
                  (cell, logs) ->
                      found
                          .computeIfAbsent(code, key -> new LinkedHashMap<>())
                          .put(cell, median(logs))));
      from = to;
    }
    return found;
  }

  private static double median(List<Double> logs) {
    Collections.sort(logs);
    int half = logs.size() / 2;
    return logs.size() % 2 == 1 ? logs.get(half) : (logs.get(half - 1) + logs.get(half)) / 2;
  }

  private static void dropSuspects(Map<Cell, Double> own) {
    Set<Long> suspects = suspects(own);
    if (!suspects.isEmpty()) {
      own.keySet().removeIf(cell -> suspects.contains(cell.member()));
    }
  }

  /** Set aside within one value: what is far off among all may be usual for that value. */
  private static Set<Long> suspects(Map<Cell, Double> values) {
    List<Long> members = List.copyOf(members(values));
    boolean[] far = ModifiedZ.suspects(voices(values, Set.of()));
    return IntStream.range(0, far.length)
        .filter(i -> far[i])
        .mapToObj(members::get)
        .collect(Collectors.toSet());
  }

  private static Cell cell(Dosed dosed, int i, Property property) {
    int material =
        property == Property.MATERIAL ? -1 : dosed.group().code(Property.MATERIAL, dosed.rows()[i]);
    return new Cell(dosed.member(i), material);
  }

  private static Set<Long> members(Map<Cell, Double> values) {
    Set<Long> members = new TreeSet<>();
    values.keySet().forEach(cell -> members.add(cell.member()));
    return members;
  }

  private static Optional<Ratio> ratio(Map<Cell, Double> a, Map<Cell, Double> b) {
    Map<Long, List<Double>> differences = new TreeMap<>();
    a.forEach(
        (cell, log) -> {
          if (b.containsKey(cell)) {
            differences
                .computeIfAbsent(cell.member(), key -> new ArrayList<>())
                .add(log - b.get(cell));
          }
        });
    if (differences.size() >= Ratio.FEWEST_PAIRS) {
      double[] ratios = exp(differences.values().stream().map(Summary::mean));
      double[] ones = new double[ratios.length];
      Arrays.fill(ones, 1);
      return Ratio.paired(ratios, ones);
    }
    // a member in both groups would be compared with themselves by half: counted in one only
    Set<Long> first = members(a);
    return Ratio.unpaired(voices(a, Set.of()), voices(b, first));
  }

  private static double[] voices(Map<Cell, Double> values, Set<Long> without) {
    Map<Long, List<Double>> own = new TreeMap<>();
    values.forEach(
        (cell, log) -> {
          if (!without.contains(cell.member())) {
            own.computeIfAbsent(cell.member(), key -> new ArrayList<>()).add(log);
          }
        });
    return exp(own.values().stream().map(Summary::mean));
  }

  private static double[] exp(Stream<Double> logs) {
    return logs.mapToDouble(Math::exp).toArray();
  }
}
