package club.emberwell.api.consensus;

import static club.emberwell.api.view.QuantityJson.number;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.consensus.Borrowing;
import club.emberwell.consensus.Contrast;
import club.emberwell.consensus.Disagreement;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.RangeDetail.Findings;
import club.emberwell.consensus.dose.BetweenMembers;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import club.emberwell.stats.Camps;
import club.emberwell.stats.DipTest;
import club.emberwell.stats.PermutationSplit;
import club.emberwell.stats.Ratio;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What goes beyond the core of a range. Doses are canonical, their unit beside them.
 *
 * @param band where one more member's dose lands
 * @param camps whether the voices disagree and why
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record FindingsJson(
    @Nullable IntervalJson band,
    @Nullable WindowJson window,
    @Nullable BetweenJson between,
    @Nullable CampsJson camps,
    @Nullable List<ContrastJson> contrasts,
    @Nullable BorrowedJson borrowed) {
  private static final String BAND_MEANS =
      "Where the first right test of one more member lands, with this probability.";

  static FindingsJson of(RangeDetail detail) {
    Optional<Findings> findings = detail.findings();
    return new FindingsJson(
        IntervalJson.of(detail.range().dose().nextMember(), BAND_MEANS),
        findings.map(Findings::window).map(WindowJson::of).orElse(null),
        findings.map(Findings::between).map(BetweenJson::of).orElse(null),
        findings.map(Findings::disagreement).map(CampsJson::of).orElse(null),
        findings.map(f -> f.contrasts().stream().map(ContrastJson::of).toList()).orElse(null),
        detail.borrowing().map(BorrowedJson::of).orElse(null));
  }

  static String unitOf(Measure measure) {
    return measure.dimension().map(QuantityKind::canonicalUnit).orElse("");
  }

  /**
   * How different members are.
   *
   * @param repeats right trials beyond the first of each member
   * @param factor about two members of three lie within it around the middle; 1 = no difference can
   *     be seen yet
   * @param interval 95 % interval of the factor
   * @param factorWithin the same for the trials of one member
   * @param missing why there is no estimate
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "BetweenMembers")
  record BetweenJson(
      int members,
      int trials,
      int repeats,
      @Nullable BigDecimal factor,
      @Nullable IntervalJson interval,
      @Nullable BigDecimal factorWithin,
      @Nullable String missing) {
    static BetweenJson of(BetweenMembers between) {
      return new BetweenJson(
          between.members(),
          between.trials(),
          between.repeats(),
          between.estimate().map(e -> number(e.factor())).orElse(null),
          IntervalJson.of(between.estimate().map(BetweenMembers.Estimate::interval), null),
          between.estimate().map(e -> number(e.within())).orElse(null),
          between.missing().orElse(null));
    }
  }

  /**
   * Whether the voices fall into camps.
   *
   * @param explainedBy the recorded property that parts them; left out where none does
   * @param pValue of the split by Holm's rule, or of the dip
   * @param tested the properties that were tried
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record CampsJson(
      boolean found,
      @Nullable String explainedBy,
      @JsonUnwrapped @Nullable SplitJson split,
      @Nullable BigDecimal dip,
      @Nullable BigDecimal pValue,
      List<String> tested,
      String sentence) {
    static CampsJson of(Disagreement found) {
      Optional<PermutationSplit> split = found.camps().flatMap(Camps::split);
      Optional<DipTest> dip = found.camps().flatMap(Camps::dip);
      return new CampsJson(
          found.found(),
          found.property().map(Property::code).orElse(null),
          split.map(SplitJson::of).orElse(null),
          dip.map(d -> number(d.dip())).orElse(null),
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
   * The two camps.
   *
   * @param ratio geometric mean dose of the high camp over that of the low one
   */
  record SplitJson(List<String> low, List<String> high, @Nullable BigDecimal ratio) {
    static SplitJson of(PermutationSplit split) {
      return new SplitJson(split.low(), split.high(), number(split.ratio()));
    }
  }

  /**
   * One value of a property against another.
   *
   * @param higher the value that took the higher dose
   * @param lower the other one
   * @param kind paired (members who did both) or unpaired (weaker)
   * @param adjusted p-value by Holm's rule
   */
  record ContrastJson(
      String property,
      String higher,
      String lower,
      Ratio.Kind kind,
      @JsonUnwrapped RatioJson comparison,
      BigDecimal adjusted,
      boolean clear,
      String sentence) {
    static ContrastJson of(Contrast contrast) {
      return new ContrastJson(
          contrast.property().code(),
          contrast.more(),
          contrast.less(),
          contrast.ratio().kind(),
          RatioJson.of(contrast.ratio()),
          number(contrast.adjusted()),
          contrast.clear(),
          contrast.sentence());
    }
  }

  /**
   * How many times the dose it took.
   *
   * @param n pairs, or members in both groups together
   */
  record RatioJson(int n, BigDecimal ratio, BigDecimal low, BigDecimal high) {
    static RatioJson of(Ratio found) {
      return new RatioJson(
          found.n(),
          number(found.ratio()),
          number(found.interval().low()),
          number(found.interval().high()));
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
      @JsonUnwrapped Lenders lenders,
      String unit,
      @Nullable BigDecimal own,
      BigDecimal value,
      IntervalJson interval,
      BigDecimal borrowedShare,
      String sentence) {

    /** Who it is borrowed from, and the property they differ in. */
    record Lenders(String from, String by, int relatives, int members) {}

    static BorrowedJson of(Borrowing borrowing) {
      return new BorrowedJson(
          new Lenders(
              borrowing.lenders().words(),
              borrowing.lenders().by().code(),
              borrowing.lenders().relatives(),
              borrowing.lenders().members()),
          unitOf(borrowing.measure()),
          borrowing.own().map(QuantityJson::number).orElse(null),
          number(borrowing.value()),
          IntervalJson.of(borrowing.interval()),
          number(1 - borrowing.weightOnOwn()),
          borrowing.sentence());
    }
  }
}
