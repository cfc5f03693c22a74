package club.emberwell.api.consensus;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.consensus.Spread;
import club.emberwell.consensus.VoiceSet;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.stats.Interval;
import club.emberwell.stats.Quantiles.Seven;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * How the voices of one measure lie. Below 3 voices every quantile is null and {@code values} holds
 * the dots.
 *
 * @param unit UCUM code, canonical; empty for a count
 * @param n right trials that state it
 * @param voices members that state it
 * @param medianLow of the 95 % interval of the middle; null below 6 voices
 * @param medianCoverage what that interval really covers
 * @param nextLow where one more member lands with {@code nextProbability}
 * @param values of the voices, ascending, one a member; null from 50 voices
 * @param aside voices set aside: counted apart from all the others
 */
@JsonInclude(JsonInclude.Include.ALWAYS)
record SpreadJson(
    String unit,
    int n,
    int voices,
    BigDecimal min,
    BigDecimal p10,
    BigDecimal p25,
    BigDecimal median,
    BigDecimal p75,
    BigDecimal p90,
    BigDecimal max,
    BigDecimal medianLow,
    BigDecimal medianHigh,
    BigDecimal medianCoverage,
    BigDecimal nextLow,
    BigDecimal nextHigh,
    BigDecimal nextProbability,
    List<BigDecimal> values,
    List<BigDecimal> aside) {
  /** From so many voices single dots tell nothing more. */
  private static final int DOTS = 50;

  static SpreadJson of(Spread spread) {
    Function<ToDoubleFunction<Seven>, BigDecimal> quantile =
        of -> spread.quantiles().map(q -> number(of.applyAsDouble(q))).orElse(null);
    Interval middle = spread.medianInterval().orElse(null);
    Interval next = spread.nextMember().orElse(null);
    return new SpreadJson(
        spread.measure().dimension().map(QuantityKind::canonicalUnit).orElse(""),
        spread.n(),
        spread.voices().size(),
        quantile.apply(Seven::min),
        quantile.apply(Seven::p10),
        quantile.apply(Seven::p25),
        quantile.apply(Seven::median),
        quantile.apply(Seven::p75),
        quantile.apply(Seven::p90),
        quantile.apply(Seven::max),
        middle == null ? null : number(middle.low()),
        middle == null ? null : number(middle.high()),
        middle == null ? null : number(middle.coverage()),
        next == null ? null : number(next.low()),
        next == null ? null : number(next.high()),
        next == null ? null : number(next.coverage()),
        spread.voices().size() < DOTS ? values(spread.voices()) : null,
        values(spread.aside()));
  }

  private static List<BigDecimal> values(VoiceSet voices) {
    return Arrays.stream(voices.values()).sorted().mapToObj(SpreadJson::number).toList();
  }

  static BigDecimal number(double value) {
    return QuantityJson.number(value);
  }
}
