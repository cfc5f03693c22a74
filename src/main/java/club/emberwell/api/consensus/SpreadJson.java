package club.emberwell.api.consensus;

import static club.emberwell.api.view.QuantityJson.number;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.consensus.range.Spread;
import club.emberwell.consensus.range.VoiceSet;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.stats.Interval;
import club.emberwell.stats.Quantiles.Seven;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How the voices of one measure lie. Below 3 voices there are no quantiles and {@code values} holds
 * the dots.
 *
 * @param unit UCUM code, canonical; left out for a count
 * @param n right trials that state it
 * @param voices members that state it
 * @param values of the voices, ascending, one a member; left out from 50 voices
 * @param aside voices set aside: counted apart from all the others
 */
record SpreadJson(
    @Nullable String unit,
    int n,
    int voices,
    @JsonUnwrapped QuantilesJson quantiles,
    @JsonUnwrapped Middle middle,
    @JsonUnwrapped Next next,
    @Nullable List<BigDecimal> values,
    List<BigDecimal> aside) {
  /** From so many voices single dots tell nothing more. */
  private static final int DOTS = 50;

  /** The seven numbers; left out below 3 voices. */
  record QuantilesJson(
      @Nullable BigDecimal min,
      @Nullable BigDecimal p10,
      @Nullable BigDecimal p25,
      @Nullable BigDecimal median,
      @Nullable BigDecimal p75,
      @Nullable BigDecimal p90,
      @Nullable BigDecimal max) {
    static QuantilesJson of(Seven q) {
      return new QuantilesJson(
          number(q.min()),
          number(q.p10()),
          number(q.p25()),
          number(q.median()),
          number(q.p75()),
          number(q.p90()),
          number(q.max()));
    }
  }

  /**
   * The 95 % interval of the middle; left out below 6 voices.
   *
   * @param medianCoverage what that interval really covers
   */
  record Middle(
      @Nullable BigDecimal medianLow,
      @Nullable BigDecimal medianHigh,
      @Nullable BigDecimal medianCoverage) {
    static Middle of(Interval i) {
      return new Middle(number(i.low()), number(i.high()), number(i.coverage()));
    }
  }

  /** Where one more member lands with {@code nextProbability}; left out where that is not known. */
  record Next(
      @Nullable BigDecimal nextLow,
      @Nullable BigDecimal nextHigh,
      @Nullable BigDecimal nextProbability) {
    static Next of(Interval i) {
      return new Next(number(i.low()), number(i.high()), number(i.coverage()));
    }
  }

  static SpreadJson of(Spread spread) {
    return new SpreadJson(
        spread.measure().dimension().map(QuantityKind::canonicalUnit).orElse(null),
        spread.n(),
        spread.voices().size(),
        spread.quantiles().map(QuantilesJson::of).orElse(null),
        spread.medianInterval().map(Middle::of).orElse(null),
        spread.nextMember().map(Next::of).orElse(null),
        spread.voices().size() < DOTS ? values(spread.voices()) : null,
        values(spread.aside()));
  }

  private static List<BigDecimal> values(VoiceSet voices) {
    return Arrays.stream(voices.values()).sorted().mapToObj(QuantityJson::number).toList();
  }
}
