package club.emberwell.quantity;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.hipparchus.fraction.BigFraction;

/**
 * What a text may have meant: every number in it with every unit.
 *
 * @param numbers how the number may be taken, at least one
 * @param codes UCUM codes of the units it may have, none where none is known
 */
record Candidates(List<Amount> numbers, List<String> codes) {

  /** So many units are offered for a bare number. */
  private static final int OFFERED = 4;

  /**
   * A number and how to write it so that it is taken only that way.
   *
   * @param spelled with its sign, e.g. {@code -1 1/2}
   */
  record Amount(BigFraction value, String spelled) {
    static Amount of(BigDecimal value) {
      return new Amount(ExactNumbers.fraction(value), NumberText.unmistakable(value));
    }

    Amount negated() {
      return new Amount(value.negate(), "-" + spelled);
    }
  }

  /** A number without a unit. */
  static Candidates bare(QuantityKind kind, BigDecimal value) {
    return bare(kind, List.of(Amount.of(value)));
  }

  static Candidates bare(QuantityKind kind, List<Amount> numbers) {
    if (numbers.stream().anyMatch(n -> n.spelled().contains("/"))) {
      return new Candidates(numbers, List.of("[in_i]", "mm"));
    }
    return new Candidates(
        numbers, UnitTable.choices(kind).stream().map(UnitChoice::code).limit(OFFERED).toList());
  }

  boolean isClear() {
    return numbers.size() == 1 && codes.size() == 1;
  }

  /** Every reading that would be accepted, as a text that is read in just that way. */
  List<String> spelled(QuantityKind kind) {
    List<String> texts = new ArrayList<>();
    for (Amount number : numbers) {
      for (String code : codes) {
        String text = number.spelled() + " " + UnitTable.label(kind.dimension(), code);
        boolean accepted =
            CanonicalRules.settle(kind, text, number.value(), UcumCodes.tabled(code, kind))
                .value()
                .isPresent();
        if (accepted && text.length() <= QuantityLimits.TEXT) {
          texts.add(text);
        }
      }
    }
    return texts;
  }
}
