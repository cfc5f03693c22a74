package club.emberwell.api.consensus;

import static club.emberwell.api.view.QuantityJson.number;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.consensus.dose.Window;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.DoseWindow;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.jspecify.annotations.Nullable;

/**
 * From which dose to which dose it is right.
 *
 * @param state what can be said of it
 * @param lower edge between too little and right, of a typical member
 * @param upper edge between right and too much
 * @param observed least and greatest dose tried
 * @param curve chances for one more member
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
@Schema(name = "DoseWindow")
record WindowJson(
    DoseWindow.State state,
    String unit,
    EdgeJson lower,
    EdgeJson upper,
    IntervalJson observed,
    @Nullable BestJson best,
    Window.Counts counts,
    List<PointJson> curve) {
  static WindowJson of(Window window) {
    return new WindowJson(
        window.fit().state(),
        FindingsJson.unitOf(window.measure()),
        EdgeJson.of(window.lower()),
        EdgeJson.of(window.upper()),
        IntervalJson.of(window.fit().observed(), null),
        window.best().map(BestJson::of).orElse(null),
        window.counts(),
        window.curve().stream().map(PointJson::of).toList());
  }

  /**
   * One edge.
   *
   * @param kind told (good enough to be said in words), rough, not-known or not-tried (nobody tried
   *     anything beyond)
   * @param dose where both grades are equally likely; left out unless told or rough
   * @param interval its 95 % interval
   * @param nextDose where it is not known, the dose whose test would tell most
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  @Schema(name = "WindowEdge")
  record EdgeJson(
      DoseLimit.Kind kind,
      @Nullable BigDecimal dose,
      @Nullable IntervalJson interval,
      @Nullable BigDecimal nextDose) {
    static EdgeJson of(DoseLimit limit) {
      return new EdgeJson(
          limit.kind(),
          number(limit.dose()),
          IntervalJson.of(limit.range(), null),
          limit.next().map(QuantityJson::number).orElse(null));
    }
  }

  /** The dose tried at which right is likeliest for one more member, and how likely. */
  @Schema(name = "BestDose")
  record BestJson(BigDecimal dose, BigDecimal chance) {
    static BestJson of(Window.Best best) {
      return new BestJson(number(best.dose()), number(best.chance()));
    }
  }

  /** A point of the curve; not observed = beyond the doses anybody tried. */
  @Schema(name = "ChancePoint")
  record PointJson(
      BigDecimal dose,
      BigDecimal tooLittle,
      BigDecimal right,
      BigDecimal tooMuch,
      boolean observed) {
    static PointJson of(Window.Point point) {
      return new PointJson(
          number(point.dose()),
          number(point.tooLittle()),
          number(point.right()),
          number(point.tooMuch()),
          point.observed());
    }
  }
}
