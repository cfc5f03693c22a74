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

  /** So many units are offered. */
  private static final int OFFERED = 4;

  /**
   * A reading that would be accepted.
   *
   * @param text is read in just that way
   */
  record Possible(String text, String code, Quantity quantity) {}

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
    boolean ruler =
        kind.dimension().isLength() && numbers.stream().anyMatch(n -> n.spelled().contains("/"));
    return new Candidates(
        numbers,
        ruler
            ? List.of("[in_i]", "mm")
            : UnitTable.choices(kind).stream().map(UnitChoice::code).toList());
  }

  boolean isClear() {
    return numbers.size() == 1 && codes.size() == 1;
  }

  /** As {@link #possible}, wherever it lies. */
  List<String> spelled(QuantityKind kind) {
    return possible(kind, Bounds.NONE).stream().map(Possible::text).toList();
  }

  /** Every reading that would be accepted within bounds, in few units. */
  List<Possible> possible(QuantityKind kind, Bounds bounds) {
    List<Possible> all = new ArrayList<>();
    for (Amount number : numbers) {
      for (String code : codes) {
        String text = number.spelled() + " " + UnitTable.label(kind.dimension(), code);
        CanonicalRules.settle(kind, text, number.value(), UcumCodes.tabled(code, kind))
            .value()
            .filter(quantity -> bounds.hold(quantity.doubleValue()))
            .filter(quantity -> text.length() <= QuantityLimits.TEXT)
            .ifPresent(quantity -> all.add(new Possible(text, code, quantity)));
      }
    }
    List<String> few =
        codes.stream()
            .filter(code -> all.stream().anyMatch(one -> one.code().equals(code)))
            .limit(OFFERED)
            .toList();
    return all.stream().filter(one -> few.contains(one.code())).toList();
  }
}
