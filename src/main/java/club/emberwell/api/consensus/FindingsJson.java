package club.emberwell.api.consensus;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.consensus.BetweenMachines;
import club.emberwell.consensus.Borrowing;
import club.emberwell.consensus.Contrast;
import club.emberwell.consensus.Disagreement;
import club.emberwell.consensus.Recorded;
import club.emberwell.consensus.Window;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.search.column.TrialColumns.Measure;
import club.emberwell.stats.Camps;
import club.emberwell.stats.DipTest;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.PermutationSplit;
import club.emberwell.stats.WindowEdges;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What goes beyond the core of a range, as JSON. Doses are canonical, their unit beside them. */
final class FindingsJson {
  private FindingsJson() {}

  static String word(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  static String unitOf(Measure measure) {
    return measure.dimension().map(QuantityKind::canonicalUnit).orElse("");
  }

  /**
   * From which dose to which dose it is right.
   *
   * @param state what can be said of it
   * @param low where a right result passes the probability; left out where no window is known
   * @param peak dose with the best chance among those tried
   * @param missing in sentences: what keeps it from being known better
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record WindowJson(
      String state,
      String unit,
      BigDecimal probability,
      EdgeJson low,
      EdgeJson high,
      BigDecimal peak,
      BigDecimal peakChance,
      LimitJson lowerLimit,
      LimitJson upperLimit,
      IntervalJson observed,
      IntervalJson crossCheck,
      Window.Counts counts,
      List<PointJson> curve,
      List<String> missing) {
    static WindowJson of(Window window) {
      Optional<WindowEdges> edges = window.edges();
      return new WindowJson(
          word(window.fit().state()),
          unitOf(window.measure()),
          QuantityJson.number(Window.PROBABILITY),
          edges.map(e -> EdgeJson.of(e.low())).orElse(null),
          edges.map(e -> EdgeJson.of(e.high())).orElse(null),
          edges.map(e -> QuantityJson.number(e.peak())).orElse(null),
          edges.map(e -> QuantityJson.number(e.peakChance())).orElse(null),
          LimitJson.of(window.fit().lower()),
          LimitJson.of(window.fit().upper()),
          window.fit().trials() == 0 ? null : IntervalJson.of(window.fit().observed()),
          IntervalJson.of(window.crossCheck(), null),
          window.counts(),
          window.curve().stream().map(PointJson::of).toList(),
          window.missing());
    }
  }

  /**
   * An edge: from and to are equal unless it is a gap.
   *
   * @param kind point, gap or open (as far as anybody tried)
   */
  record EdgeJson(String kind, BigDecimal from, BigDecimal to) {
    static EdgeJson of(WindowEdges.Edge edge) {
      return new EdgeJson(
          word(edge.kind()), QuantityJson.number(edge.from()), QuantityJson.number(edge.to()));
    }
  }

  /**
   * The dose between two neighbouring grades.
   *
   * @param kind fitted, gap or unknown
   * @param dose where the higher grade has an even chance; null unless fitted
   * @param interval its 95 % interval, or the gap; null where unknown
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record LimitJson(String kind, BigDecimal dose, IntervalJson interval) {
    static LimitJson of(DoseLimit limit) {
      return new LimitJson(
          word(limit.kind()),
          QuantityJson.number(limit.dose()),
          IntervalJson.of(limit.range(), null));
    }
  }

  /** A point of the curve; not observed = beyond the doses anybody tried. */
  record PointJson(
      BigDecimal dose,
      BigDecimal tooLittle,
      BigDecimal right,
      BigDecimal tooMuch,
      boolean observed) {
    static PointJson of(Window.Point point) {
      return new PointJson(
          QuantityJson.number(point.dose()),
          QuantityJson.number(point.tooLittle()),
          QuantityJson.number(point.right()),
          QuantityJson.number(point.tooMuch()),
          point.observed());
    }
  }

  /**
   * How different machines are.
   *
   * @param factor about two machines of three lie within it around the middle
   * @param middle interval of the middle of all such machines
   * @param next where one more machine is expected
   * @param missing why there is no estimate
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record BetweenJson(
      int machines,
      int trials,
      int repeats,
      String unit,
      BigDecimal factor,
      BigDecimal factorWithin,
      BigDecimal mean,
      IntervalJson middle,
      IntervalJson next,
      String missing) {
    static BetweenJson of(BetweenMachines between) {
      Optional<BetweenMachines.Estimate> found = between.estimate();
      return new BetweenJson(
          between.machines(),
          between.trials(),
          between.repeats(),
          unitOf(between.measure()),
          found.map(e -> QuantityJson.number(e.factor())).orElse(null),
          found.map(e -> QuantityJson.number(e.within())).orElse(null),
          found.map(e -> QuantityJson.number(e.middle())).orElse(null),
          found
              .map(e -> IntervalJson.of(e.middleInterval(), BetweenMachines.MIDDLE_MEANS))
              .orElse(null),
          found.map(e -> IntervalJson.of(e.next(), BetweenMachines.NEXT_MEANS)).orElse(null),
          between.missing().orElse(null));
    }
  }

  /**
   * Whether the voices fall into camps.
   *
   * @param explainedBy the recorded property that parts them; left out where none does
   * @param ratio geometric mean dose of the high camp over that of the low one
   * @param pValue of the split by Holm's rule, or of the dip
   * @param tested the properties that were tried
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record CampsJson(
      boolean found,
      String explainedBy,
      List<String> low,
      List<String> high,
      BigDecimal ratio,
      BigDecimal dip,
      BigDecimal pValue,
      List<String> tested,
      String sentence) {
    static CampsJson of(Disagreement found) {
      Optional<PermutationSplit> split = found.camps().flatMap(Camps::split);
      Optional<DipTest> dip = found.camps().flatMap(Camps::dip);
      return new CampsJson(
          found.found(),
          found.property().map(Recorded::code).orElse(null),
          split.map(PermutationSplit::low).orElse(null),
          split.map(PermutationSplit::high).orElse(null),
          split.map(s -> QuantityJson.number(s.ratio())).orElse(null),
          dip.map(d -> QuantityJson.number(d.dip())).orElse(null),
          split
              .map(PermutationSplit::adjusted)
              .or(() -> dip.map(DipTest::pValue))
              .map(QuantityJson::number)
              .orElse(null),
          found.tested(),
          found.sentence());
    }
  }

  /**
   * One value of a property against another.
   *
   * @param kind paired (members who did both) or unpaired (weaker)
   * @param n pairs, or members in both groups together
   * @param adjusted p-value by Holm's rule
   */
  record ContrastJson(
      String property,
      String more,
      String less,
      String kind,
      int n,
      BigDecimal ratio,
      BigDecimal low,
      BigDecimal high,
      BigDecimal adjusted,
      boolean clear,
      String sentence) {
    static ContrastJson of(Contrast contrast) {
      return new ContrastJson(
          Recorded.code(contrast.property()),
          contrast.more(),
          contrast.less(),
          word(contrast.ratio().kind()),
          contrast.ratio().n(),
          QuantityJson.number(contrast.ratio().ratio()),
          QuantityJson.number(contrast.ratio().interval().low()),
          QuantityJson.number(contrast.ratio().interval().high()),
          QuantityJson.number(contrast.adjusted()),
          contrast.clear(),
          contrast.sentence());
    }
  }

  /**
   * A second line beside too few voices.
   *
   * @param borrowedShare 0 to 1
   * @param own geometric mean of the own voices; left out where there is none
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record BorrowedJson(
      String from,
      String by,
      int relatives,
      int members,
      String unit,
      BigDecimal own,
      BigDecimal value,
      IntervalJson interval,
      BigDecimal borrowedShare,
      String sentence) {
    static BorrowedJson of(Borrowing borrowing) {
      return new BorrowedJson(
          borrowing.from(),
          Recorded.code(borrowing.by()),
          borrowing.relatives(),
          borrowing.members(),
          unitOf(borrowing.measure()),
          borrowing.own().map(QuantityJson::number).orElse(null),
          QuantityJson.number(borrowing.value()),
          IntervalJson.of(borrowing.interval()),
          QuantityJson.number(1 - borrowing.weightOnOwn()),
          borrowing.sentence());
    }
  }
}
