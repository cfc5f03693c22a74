package club.emberwell.api.consensus;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.api.view.SettingsJson;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.answer.Answer;
import club.emberwell.consensus.answer.OnMyMachine;
import club.emberwell.consensus.dose.EqualDosePair;
import club.emberwell.laser.dose.Comparison;
import club.emberwell.laser.dose.Transfer.Verdict;
import club.emberwell.quantity.QuantityKind;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What a range means on the reader's machine; the verdict comes first.
 *
 * @param start the middle of a test grid, not a setting; left out unless the verdict gives a number
 * @param lines of equal dose, cut to the machine's limits
 * @param limits published pairs of equal dose that agree and that do not
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@Schema(name = "RangeOnMachine")
record MachineJson(
    UUID machine,
    @JsonUnwrapped VerdictJson judgement,
    @JsonUnwrapped @Nullable BasisJson doses,
    @Nullable QuantityJson lineSpacing,
    @Nullable SettingsJson start,
    List<LineJson> lines,
    List<BesideJson> sideBySide,
    LimitsJson limits) {

  /**
   * Whether the range may be carried over.
   *
   * @param verdict start-of-grid, weak, side-by-side or no-transfer
   * @param reasons the deciding one first
   * @param verdicts how many voices got each
   */
  record VerdictJson(
      Verdict verdict, String label, List<String> reasons, Map<Verdict, Integer> verdicts) {
    static VerdictJson of(OnMyMachine mine) {
      return new VerdictJson(
          mine.judgement().verdict(),
          mine.judgement().verdict().label(),
          mine.judgement().reasons(),
          mine.judgement().verdicts());
    }
  }

  /** Where the doses of the lines come from. */
  record BasisJson(OnMyMachine.Basis basis, String basisSentence) {
    static BasisJson of(OnMyMachine.Basis basis) {
      return new BasisJson(basis, basis.words());
    }
  }

  /** A line of equal dose; the unit of the dose is that of the range. */
  @Schema(name = "EqualDoseLine")
  record LineJson(OnMyMachine.Place place, BigDecimal dose, List<PointJson> points) {
    static LineJson of(OnMyMachine.Line line) {
      return new LineJson(
          line.place(),
          QuantityJson.number(line.dose()),
          line.points().stream()
              .map(
                  point ->
                      new PointJson(
                          QuantityJson.number(point.powerPercent()),
                          QuantityJson.number(point.powerW()),
                          QuantityJson.number(point.speedMmS())))
              .toList());
    }
  }

  /** Power in % of rated and in W, speed in mm/s. */
  @Schema(name = "EqualDosePoint")
  record PointJson(BigDecimal powerPercent, BigDecimal power, BigDecimal speed) {}

  /** One quantity of peers and of this machine. */
  @Schema(name = "PeersAndMine")
  record BesideJson(
      String name,
      String unit,
      @Nullable BigDecimal peers,
      @Nullable BigDecimal mine,
      @Nullable BigDecimal ratio) {
    static BesideJson of(Comparison one) {
      return new BesideJson(
          one.name(),
          one.unit(),
          QuantityJson.number(one.from()),
          QuantityJson.number(one.to()),
          QuantityJson.number(one.ratio()));
    }
  }

  /** How far equal dose carries, as published. */
  @Schema(name = "TransferLimits")
  record LimitsJson(String sentence, List<PairJson> pairs) {
    static final LimitsJson PUBLISHED =
        new LimitsJson(EqualDosePair.MEANS, EqualDosePair.ALL.stream().map(PairJson::of).toList());
  }

  /**
   * Two tracks at one line dose.
   *
   * @param label the metal and the dose
   * @param source where it is published
   */
  @Schema(name = "EqualDosePair")
  record PairJson(String label, TrackJson first, TrackJson second, String source) {
    static PairJson of(EqualDosePair pair) {
      return new PairJson(
          pair.what(),
          TrackJson.of(pair.first(), pair.firstDepthUm()),
          TrackJson.of(pair.second(), pair.secondDepthUm()),
          pair.source());
    }
  }

  /**
   * One track.
   *
   * @param label its settings in words
   */
  @Schema(name = "EqualDoseTrack")
  record TrackJson(String label, QuantityJson depth) {
    static TrackJson of(String label, double depthUm) {
      return new TrackJson(label, QuantityJson.of("um", depthUm));
    }
  }

  static MachineJson of(UUID machine, OnMyMachine mine, RangeDetail detail) {
    return new MachineJson(
        machine,
        VerdictJson.of(mine),
        mine.equalDose().basis().map(BasisJson::of).orElse(null),
        QuantityJson.of(QuantityKind.LINE_SPACING, mine.equalDose().spacingMm()),
        detail
            .answer()
            .flatMap(Answer::start)
            .map(start -> SettingsJson.of(start.settings(), null))
            .orElse(null),
        mine.equalDose().lines().stream().map(LineJson::of).toList(),
        mine.sideBySide().stream().map(BesideJson::of).toList(),
        LimitsJson.PUBLISHED);
  }
}
