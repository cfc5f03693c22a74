package club.emberwell.quantity;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.math.BigDecimal;
import java.util.Optional;
import org.hipparchus.fraction.BigFraction;

/** What a value of a kind must keep to, whatever unit it came in. */
final class CanonicalRules {
  private CanonicalRules() {}

  static Reading<Quantity> settle(
      QuantityKind kind, String written, BigFraction value, Conversion conversion) {
    Optional<Remark> sign = sign(kind, value, conversion.reciprocal());
    if (sign.isPresent()) {
      return Reading.refused(written, sign.get());
    }
    BigDecimal canonical = ExactNumbers.decimal(conversion.toCanonical(value));
    return size(kind, canonical)
        .map(remark -> Reading.<Quantity>refused(written, remark))
        .orElseGet(() -> Reading.of(written, new Quantity(kind, canonical, written)));
  }

  private static Optional<Remark> sign(QuantityKind kind, BigFraction value, boolean reciprocal) {
    if (value.signum() < 0 && !kind.mayBeNegative()) {
      return Optional.of(Remark.error(RemarkId.NEGATIVE, "", "This can't be less than zero."));
    }
    if (value.signum() == 0 && (reciprocal || !kind.mayBeZero())) {
      return Optional.of(Remark.error(RemarkId.ZERO, "", "This has to be above zero."));
    }
    return Optional.empty();
  }

  private static Optional<Remark> size(QuantityKind kind, BigDecimal canonical) {
    BigDecimal size = canonical.abs();
    if (size.signum() != 0
        && (size.compareTo(QuantityLimits.LARGEST) > 0
            || size.compareTo(QuantityLimits.SMALLEST) < 0)) {
      return Optional.of(
          Remark.error(RemarkId.OUT_OF_RANGE, "", "That number is out of any range."));
    }
    if (kind == QuantityKind.POWER_PERCENT && size.compareTo(QuantityLimits.WHOLE_PERCENT) > 0) {
      return Optional.of(
          Remark.error(RemarkId.ABOVE_WHOLE, "", "A share of the rated power ends at 100 %."));
    }
    return Optional.empty();
  }
}
