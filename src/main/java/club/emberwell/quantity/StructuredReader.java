package club.emberwell.quantity;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Severity;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** A number and a UCUM code. */
final class StructuredReader {
  private StructuredReader() {}

  static Reading<Quantity> read(QuantityKind kind, BigDecimal value, String unit, String written) {
    if (unit.isEmpty()) {
      return Reading.refused(
          written,
          new Remark(
              RemarkId.UNIT_MISSING,
              Severity.ERROR,
              "",
              "A unit is needed: a UCUM code such as " + kind.canonicalUnit() + ".",
              Candidates.bare(kind, value).spelled(kind)));
    }
    Optional<Conversion> conversion =
        UnitTable.knows(kind.dimension(), unit)
            ? Optional.of(UcumCodes.tabled(unit, kind))
            : UcumCodes.conversion(unit, kind);
    if (conversion.isEmpty()) {
      boolean known = UcumCodes.isKnown(unit) || UnitTable.knowsAnywhere(unit);
      return Reading.refused(written, known ? otherDimension(kind) : unknown(kind, written));
    }
    return CanonicalRules.settle(kind, written, ExactNumbers.fraction(value), conversion.get());
  }

  private static Remark otherDimension(QuantityKind kind) {
    return Remark.error(
        RemarkId.UNIT_OF_OTHER_DIMENSION,
        "",
        "That unit measures something else; here a unit like "
            + kind.canonicalUnit()
            + " is needed.");
  }

  private static Remark unknown(QuantityKind kind, String written) {
    Reading<Quantity> asText =
        written.length() > QuantityLimits.TEXT
            ? Reading.refused(written)
            : QuantityReader.read(kind, written);
    return new Remark(
        RemarkId.UNIT_UNKNOWN,
        Severity.ERROR,
        "",
        "That is no UCUM code known here; one would be " + kind.canonicalUnit() + ".",
        asText.value().isPresent() ? List.of(written) : List.of());
  }
}
