package club.emberwell.consensus;

import club.emberwell.catalog.Caution;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.RangeKey;
import club.emberwell.consensus.range.Spread;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.SearchQuery;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Two to four combinations beside each other.
 *
 * @param entries in the order asked
 * @param axes one for each dose and setting that at least one entry states: entries share it
 * @param remarks what keeps the entries from being compared straight away, in sentences
 */
public record SideBySide(List<Entry> entries, Map<Measure, Axis> axes, List<String> remarks) {

  /**
   * One combination.
   *
   * @param range its largest range; empty where nothing was found
   * @param others how many more ranges it has, of other works or other lasers
   * @param cautions of the works in its range
   */
  public record Entry(
      SearchQuery query, Optional<Range> range, int others, List<Caution> cautions) {}

  /**
   * A common axis, canonical unit.
   *
   * @param logarithmic true where every value is positive
   */
  public record Axis(double low, double high, boolean logarithmic) {}

  static SideBySide of(List<SearchQuery> queries, List<List<RangeDetail>> ranges) {
    List<Entry> entries = new ArrayList<>();
    Optional<RangeKey> wanted =
        ranges.stream()
            .filter(list -> !list.isEmpty())
            .map(list -> list.get(0).range().key())
            .findFirst();
    for (int i = 0; i < queries.size(); i++) {
      List<RangeDetail> list = ranges.get(i);
      // the first entry's key where the others have it too, so that like is set beside like
      Optional<RangeDetail> range =
          list.stream()
              .filter(r -> wanted.filter(key -> alike(key, r.range().key())).isPresent())
              .findFirst()
              .or(() -> list.stream().findFirst());
      entries.add(
          new Entry(
              queries.get(i),
              range.map(RangeDetail::range),
              Math.max(0, list.size() - 1),
              range.map(RangeDetail::cautions).orElse(List.of())));
    }
    return new SideBySide(List.copyOf(entries), axes(entries), remarks(entries));
  }

  private static boolean alike(RangeKey one, RangeKey other) {
    return one.process() == other.process() && one.sameLight(other);
  }

  private static Map<Measure, Axis> axes(List<Entry> entries) {
    Map<Measure, double[]> values = new TreeMap<>();
    entries.stream()
        .flatMap(entry -> entry.range().stream())
        .flatMap(range -> Stream.concat(Stream.of(range.dose()), range.settings().stream()))
        .filter(spread -> !spread.isEmpty())
        .forEach(spread -> values.merge(spread.measure(), all(spread), SideBySide::join));
    Map<Measure, Axis> axes = new TreeMap<>();
    values.forEach(
        (measure, all) -> {
          double low = Arrays.stream(all).min().orElseThrow();
          double high = Arrays.stream(all).max().orElseThrow();
          axes.put(measure, new Axis(low, high, low > 0));
        });
    return axes;
  }

  private static double[] all(Spread spread) {
    return join(spread.voices().values(), spread.aside().values());
  }

  private static double[] join(double[] a, double[] b) {
    return DoubleStream.concat(Arrays.stream(a), Arrays.stream(b)).toArray();
  }

  private static List<String> remarks(List<Entry> entries) {
    List<RangeKey> keys =
        entries.stream()
            .flatMap(entry -> entry.range().stream())
            .map(Range::key)
            .distinct()
            .toList();
    List<String> remarks = new ArrayList<>();
    if (keys.stream().map(Range::doseMeasure).distinct().count() > 1) {
      remarks.add("Area and line work have different doses: they do not share an axis.");
    }
    if (keys.stream().map(RangeKey::light).distinct().count() > 1
        || keys.stream().map(RangeKey::regime).distinct().count() > 1) {
      remarks.add(
          "These lasers differ in wavelength or pulse duration: doses stand side by side, none"
              + " carries over to the other.");
    }
    if (keys.stream().map(RangeKey::process).distinct().count() > 1) {
      remarks.add("The processes differ.");
    }
    return List.copyOf(remarks);
  }
}
