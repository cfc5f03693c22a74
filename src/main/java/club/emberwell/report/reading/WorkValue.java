package club.emberwell.report.reading;

import club.emberwell.catalog.TermKind;
import club.emberwell.quantity.Bounds;
import club.emberwell.quantity.QuantityKind;

/**
 * What may be given for a property of the work.
 *
 * @param vocabulary a word is filed in, null where it is none
 * @param kind of a quantity, null where it is none
 * @param bounds of a quantity, in its canonical unit: what lies beyond cannot be meant
 * @param longest characters of a word or a text
 * @param weight of a find among its words; 0 where a search does not look there
 */
public record WorkValue(
    Shape shape, TermKind vocabulary, QuantityKind kind, Bounds bounds, int longest, float weight) {
  /** How it is written and kept. */
  public enum Shape {
    /** A word of a vocabulary, kept as written until it is filed. */
    WORD,
    /** A number with its unit; kept in the canonical unit. */
    QUANTITY,
    /** One line, as it is. */
    TEXT,
    /** Several lines, as they are. */
    LINES;

    /** Whether it is kept as it is. */
    public boolean isFree() {
      return this == TEXT || this == LINES;
    }
  }

  static WorkValue word(TermKind vocabulary) {
    return new WorkValue(Shape.WORD, vocabulary, null, null, ReadingLimits.WORDS, 0);
  }

  static WorkValue quantity(QuantityKind kind, double min, double max) {
    return new WorkValue(Shape.QUANTITY, null, kind, new Bounds(min, max), 0, 0);
  }

  static WorkValue text(int longest) {
    return new WorkValue(Shape.TEXT, null, null, null, longest, 0);
  }

  static WorkValue lines(int longest) {
    return new WorkValue(Shape.LINES, null, null, null, longest, 0);
  }

  WorkValue weighing(float more) {
    return new WorkValue(shape, vocabulary, kind, bounds, longest, more);
  }
}
