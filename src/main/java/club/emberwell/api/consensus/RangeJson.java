package club.emberwell.api.consensus;

import club.emberwell.api.view.CautionJson;
import club.emberwell.api.view.KeyJson;
import club.emberwell.api.view.QuantityJson;
import club.emberwell.consensus.RangeDetail;
import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.Success;
import club.emberwell.laser.DoseKind;
import club.emberwell.report.ReportBrief;
import club.emberwell.stats.Evidence;
import club.emberwell.stats.MemberShare;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * What peers' right trials say for one process, wavelength band and regime. It describes; it
 * recommends nothing.
 *
 * @param settings by name, only those that anybody stated
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record RangeJson(
    KeyJson key,
    @JsonUnwrapped Behind behind,
    Map<String, SpreadJson> settings,
    DoseJson dose,
    @Nullable SuccessJson success,
    @JsonUnwrapped FindingsJson findings,
    @JsonUnwrapped ReaderJson reader,
    @JsonUnwrapped Reasons reasons) {

  /** What stands behind it. */
  record Behind(int trials, int reports, int voices, int machines, Evidence evidence) {
    static Behind of(Range range) {
      return new Behind(
          range.counts().trials(),
          range.counts().reports(),
          range.counts().voices(),
          range.counts().machines(),
          range.evidence());
    }
  }

  /** What it means to whoever asks. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ReaderJson(@Nullable MachineJson forMachine, @Nullable AnswerJson answer) {}

  /** What to beware of, and how the numbers came about. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Reasons(List<CautionJson> cautions, @Nullable ExplainJson explain) {}

  /**
   * The nominal dose by which this work is compared.
   *
   * @param kind areal (J/mm2) or line (J/mm)
   */
  record DoseJson(DoseKind kind, @JsonUnwrapped SpreadJson spread) {}

  /**
   * How often it works; left out where the search itself filters by effect.
   *
   * @param right right ones among the single trials
   * @param trials single trials
   * @param share mean of the members' own shares, 0 to 1; left out where nobody tried
   * @param members behind it
   * @param grids trials of reports with several, which belong to the share of nobody
   */
  record SuccessJson(
      int right,
      int trials,
      @Nullable BigDecimal share,
      @Nullable BigDecimal low,
      @Nullable BigDecimal high,
      int members,
      CellsJson grids) {
    static SuccessJson of(Success success) {
      MemberShare share = success.share().orElse(null);
      return new SuccessJson(
          success.right(),
          success.trials(),
          share == null ? null : QuantityJson.number(share.share()),
          share == null ? null : QuantityJson.number(share.interval().low()),
          share == null ? null : QuantityJson.number(share.interval().high()),
          share == null ? 0 : share.members(),
          new CellsJson(success.cells().right(), success.cells().cells()));
    }
  }

  /** Cells of test grids. */
  @Schema(name = "GridCells")
  record CellsJson(int right, int trials) {}

  /**
   * @param machine the machine asked about, or null
   * @param reports those its answer names
   */
  static RangeJson of(RangeDetail detail, UUID machine, Map<Long, ReportBrief> reports) {
    Range range = detail.range();
    return new RangeJson(
        KeyJson.of(range.key()),
        Behind.of(range),
        settings(range),
        new DoseJson(range.key().process().doseKind(), SpreadJson.of(range.dose())),
        range.success().map(SuccessJson::of).orElse(null),
        FindingsJson.of(detail),
        new ReaderJson(
            detail.forMachine().map(mine -> MachineJson.of(machine, mine, detail)).orElse(null),
            detail.answer().map(answer -> AnswerJson.of(answer, reports)).orElse(null)),
        new Reasons(
            detail.cautions().stream().map(CautionJson::of).toList(),
            detail.explanation().map(ExplainJson::of).orElse(null)));
  }

  private static Map<String, SpreadJson> settings(Range range) {
    Map<String, SpreadJson> settings = new LinkedHashMap<>();
    for (Spread spread : range.settings()) {
      settings.put(spread.measure().code(), SpreadJson.of(spread));
    }
    return settings;
  }
}
