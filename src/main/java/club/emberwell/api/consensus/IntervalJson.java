package club.emberwell.api.consensus;

import club.emberwell.api.view.QuantityJson;
import club.emberwell.stats.Interval;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.math.BigDecimal;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * From one value to another.
 *
 * @param probability what it claims to hold with; left out where nothing is claimed
 * @param sentence what it says, in a sentence; left out where its place says it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record IntervalJson(
    @Nullable BigDecimal low,
    @Nullable BigDecimal high,
    @Nullable BigDecimal probability,
    @Nullable String sentence) {
  static IntervalJson of(Interval interval) {
    return of(interval, null);
  }

  static IntervalJson of(Interval interval, String sentence) {
    return new IntervalJson(
        QuantityJson.number(interval.low()),
        QuantityJson.number(interval.high()),
        QuantityJson.number(interval.coverage()),
        sentence);
  }

  static IntervalJson of(Optional<Interval> interval, String sentence) {
    return interval.map(i -> of(i, sentence)).orElse(null);
  }
}
