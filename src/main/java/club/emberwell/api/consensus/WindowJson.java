package club.emberwell.api.consensus;

import static club.emberwell.api.view.QuantityJson.number;

import club.emberwell.consensus.dose.Window;
import club.emberwell.stats.DoseLimit;
import club.emberwell.stats.DoseWindow;
import club.emberwell.stats.WindowEdges;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.List;

/**
 * From which dose to which dose it is right.
 *
 * @param state what can be said of it
 * @param missing in sentences: what keeps it from being known better
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record WindowJson(
    DoseWindow.State state,
    String unit,
    BigDecimal probability,
    @JsonUnwrapped EdgesJson edges,
    @JsonUnwrapped LimitsJson limits,
    Window.Counts counts,
    List<PointJson> curve,
    List<String> missing) {
  static WindowJson of(Window window) {
    return new WindowJson(
        window.fit().state(),
        FindingsJson.unitOf(window.measure()),
        number(Window.PROBABILITY),
        window.edges().map(EdgesJson::of).orElse(null),
        LimitsJson.of(window),
        window.counts(),
        window.curve().stream().map(PointJson::of).toList(),
        window.missing());
  }

  /**
   * Where a right result passes the probability; left out where no window is known.
   *
   * @param peak dose with the best chance among those tried
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record EdgesJson(EdgeJson low, EdgeJson high, BigDecimal peak, BigDecimal peakChance) {
    static EdgesJson of(WindowEdges e) {
      return new EdgesJson(
          EdgeJson.of(e.low()), EdgeJson.of(e.high()), number(e.peak()), number(e.peakChance()));
    }
  }

  /** The doses between the grades, those that were tried, and the edges by another model. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record LimitsJson(
      LimitJson lowerLimit, LimitJson upperLimit, IntervalJson observed, IntervalJson crossCheck) {
    static LimitsJson of(Window window) {
      return new LimitsJson(
          LimitJson.of(window.fit().lower()),
          LimitJson.of(window.fit().upper()),
          window.fit().trials() == 0 ? null : IntervalJson.of(window.fit().observed()),
          IntervalJson.of(window.crossCheck(), null));
    }
  }

  /**
   * An edge: from and to are equal unless it is a gap.
   *
   * @param kind point, gap or open (as far as anybody tried)
   */
  record EdgeJson(WindowEdges.Kind kind, BigDecimal from, BigDecimal to) {
    static EdgeJson of(WindowEdges.Edge edge) {
      return new EdgeJson(edge.kind(), number(edge.from()), number(edge.to()));
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
  record LimitJson(DoseLimit.Kind kind, BigDecimal dose, IntervalJson interval) {
    static LimitJson of(DoseLimit limit) {
      return new LimitJson(
          limit.kind(), number(limit.dose()), IntervalJson.of(limit.range(), null));
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
          number(point.dose()),
          number(point.tooLittle()),
          number(point.right()),
          number(point.tooMuch()),
          point.observed());
    }
  }
}
