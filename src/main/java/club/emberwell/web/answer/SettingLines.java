package club.emberwell.web.answer;

import club.emberwell.consensus.range.Range;
import club.emberwell.consensus.range.Spread;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.stats.Quantiles;
import club.emberwell.web.plot.Axis;
import club.emberwell.web.plot.BandLine;
import club.emberwell.web.range.MeasureText;
import java.util.Arrays;
import java.util.List;

/** Each setting by itself, a line each. */
final class SettingLines {
  private SettingLines() {}

  static List<AnswerView.Setting> of(Range range, UnitPreferences reader) {
    return range.settings().stream()
        .filter(spread -> spread.quantiles().isPresent())
        .map(spread -> line(spread, new MeasureText(spread.measure(), reader)))
        .toList();
  }

  private static AnswerView.Setting line(Spread spread, MeasureText text) {
    Quantiles.Seven q = spread.quantiles().orElseThrow();
    double[] ends = text.ends(q.min(), q.max());
    String unit = text.unit().isEmpty() ? "" : " " + text.unit();
    boolean same = q.min() == q.max();
    return new AnswerView.Setting(
        spread.measure().label(),
        (same ? "all " : "about ") + text.told(q.median()) + unit,
        same ? "" : text.shown(ends[0]) + " to " + text.shown(ends[1]) + unit,
        strip(spread, q, text));
  }

  /** The middle half of the members with the middle; offsets that may be negative have no strip. */
  private static BandLine strip(Spread spread, Quantiles.Seven q, MeasureText text) {
    double[] values = text.values(spread.voices().values());
    if (q.min() == q.max() || Arrays.stream(values).anyMatch(value -> value <= 0)) {
      return null;
    }
    Axis axis = BandLine.axis(values);
    return BandLine.of(axis, text.value(q.median()), text.ends(q.p25(), q.p75()), new double[0]);
  }
}
