package club.emberwell.quantity;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * Quantities as people type them, and as programs send them. Bad input never throws: it comes back
 * refused, with a remark of {@link QuantityRemarks} whose field is empty (the caller moves it with
 * {@link Reading#at}) and, where the text could mean two things, with the possible readings, each
 * of which is read when typed. Nothing is guessed: a text that can mean one thing only is read with
 * a note of what it was read as, and of words that were left out. A null text is an empty one.
 */
public final class QuantityReader {
  private QuantityReader() {}

  /** By the rules of the API: {@code 1,000} and {@code 4.500} are asked about. */
  public static Reading<Quantity> read(QuantityKind kind, String text) {
    return read(kind, text, NumberStyle.ANY);
  }

  /** By the number style that the writer has stated; for that member's own pages. */
  public static Reading<Quantity> read(QuantityKind kind, String text, NumberStyle style) {
    return read(kind, text, style, Bounds.NONE);
  }

  /**
   * The same for a place that takes no value outside of bounds: readings beyond them are not asked
   * about, unless there are no others. A clear value is read wherever it lies.
   *
   * @param bounds in the canonical unit
   */
  public static Reading<Quantity> read(
      QuantityKind kind, String text, NumberStyle style, Bounds bounds) {
    String written = text == null ? "" : text;
    if (written.length() > QuantityLimits.TEXT) {
      return refused(
          written,
          RemarkId.TEXT_TOO_LONG,
          "A quantity has at most " + QuantityLimits.TEXT + " characters.");
    }
    if (written.isBlank()) {
      return refused(written, RemarkId.EMPTY, "Nothing was given.");
    }
    Optional<String> normal = NormalText.of(written);
    if (normal.isEmpty()) {
      return refused(
          written,
          RemarkId.UNREADABLE_CHARACTER,
          "There is a character here that no quantity has.");
    }
    if (normal.get().isEmpty()) {
      return refused(written, RemarkId.EMPTY, "Nothing was given.");
    }
    return new TextReader(kind, style, new Settling(kind, written, bounds)).read(normal.get());
  }

  /** The structured form: a number and a UCUM code, case sensitive. */
  public static Reading<Quantity> read(QuantityKind kind, BigDecimal value, String ucumUnit) {
    String unit = ucumUnit == null ? "" : ucumUnit;
    if (value == null) {
      return refused(unit, RemarkId.NOT_A_NUMBER, "There is no number here.");
    }
    if (isAbsurd(value)) {
      return refused(unit, RemarkId.OUT_OF_RANGE, "That number is out of any range.");
    }
    String written = (ExactNumbers.plain(value).toPlainString() + " " + unit).strip();
    return StructuredReader.read(kind, value, unit, written);
  }

  // Asked of the scale first: expanding 1e999999999 would take all memory.
  private static boolean isAbsurd(BigDecimal value) {
    return value.precision() > QuantityLimits.DIGITS
        || Math.abs((long) value.scale()) > QuantityLimits.DIGITS;
  }

  private static Reading<Quantity> refused(String written, RemarkId id, String detail) {
    return Reading.refused(written, Remark.error(id, "", detail));
  }
}
