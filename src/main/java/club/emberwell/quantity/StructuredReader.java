package club.emberwell.quantity;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.Severity;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** A number and a UCUM code. */
final class StructuredReader {
  private StructuredReader() {}

  static Reading<Quantity> read(
      QuantityKind dimension, BigDecimal value, String unit, String written) {
    if (unit.isEmpty()) {
      return Reading.refused(
          written,
          new Remark(
              QuantityRemarks.UNIT_MISSING,
              Severity.ERROR,
              "",
              "A unit is needed: a UCUM code such as " + dimension.canonicalUnit() + ".",
              Candidates.bare(dimension, value).spelled(dimension)));
    }
    Optional<Conversion> conversion =
        UnitTable.knows(Dimension.of(dimension), unit)
            ? Optional.of(UcumCodes.tabled(unit, dimension))
            : UcumCodes.conversion(unit, dimension);
    if (conversion.isEmpty()) {
      boolean known = UcumCodes.isKnown(unit) || UnitTable.knowsAnywhere(unit);
      return Reading.refused(
          written, known ? otherDimension(dimension) : unknown(dimension, written));
    }
    return CanonicalRules.settle(
        dimension, written, ExactNumbers.fraction(value), conversion.get());
  }

  private static Remark otherDimension(QuantityKind dimension) {
    return Remark.error(
        QuantityRemarks.UNIT_OF_OTHER_DIMENSION,
        "",
        "That unit measures something else; here a unit like "
            + dimension.canonicalUnit()
            + " is needed.");
  }

  private static Remark unknown(QuantityKind dimension, String written) {
    Reading<Quantity> asText =
        written.length() > QuantityLimits.TEXT
            ? Reading.refused(written)
            : QuantityReader.read(dimension, written);
    return new Remark(
        QuantityRemarks.UNIT_UNKNOWN,
        Severity.ERROR,
        "",
        "That is no UCUM code known here; one would be " + dimension.canonicalUnit() + ".",
        asText.value().isPresent() ? List.of(written) : List.of());
  }
}
