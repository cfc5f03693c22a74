package club.emberwell.quantity;

import java.text.Normalizer;
import java.util.Optional;

/**
 * One form for what keyboards, phones and word processors make of the same text: NFKC, one kind of
 * digit, space, minus, quote and micro sign. Digits of any script become 0 to 9; of the Arabic
 * marks only {@link #DECIMAL_MARK} stays, since it can mean nothing else. What NFKC would silently
 * turn into another number (a vulgar fraction after a digit, a raised digit after a number) is
 * spaced apart or refused.
 */
final class NormalText {
  /** The Arabic decimal separator. */
  static final char DECIMAL_MARK = '\u066b';

  private static final char FRACTION_SLASH = '\u2044';

  private NormalText() {}

  /** Empty where a character can't be read as part of a quantity. */
  static Optional<String> of(String text) {
    String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
    StringBuilder out = new StringBuilder(text.length() + 8);
    for (int i = 0; i < composed.length(); ) {
      int c = mark(composed.codePointAt(i));
      i += Character.charCount(c);
      if (!isDirectionMark(c) && !append(out, c) || out.length() > 2 * QuantityLimits.TEXT) {
        return Optional.empty();
      }
    }
    return Optional.of(out.toString().replace("''", "\"").replaceAll(" +", " ").strip());
  }

  private static boolean append(StringBuilder out, int c) {
    if (c < 0x7f && c > 0x1f) {
      out.append((char) c);
      return true;
    }
    if (Character.isWhitespace(c) || Character.getType(c) == Character.SPACE_SEPARATOR) {
      out.append(' ');
      return true;
    }
    int type = Character.getType(c);
    // Beyond the basic plane digits are ornaments of mathematics.
    if (type == Character.DECIMAL_DIGIT_NUMBER && Character.isBmpCodePoint(c)) {
      out.append(Character.digit(c, 10));
      return true;
    }
    if (type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.SURROGATE
        || type == Character.UNASSIGNED
        || type == Character.PRIVATE_USE) {
      return false;
    }
    String folded = Normalizer.normalize(Character.toString(c), Normalizer.Form.NFKC);
    return appendFolded(out, c, folded);
  }

  private static boolean appendFolded(StringBuilder out, int c, String folded) {
    if (folded.indexOf(FRACTION_SLASH) >= 0) {
      return appendFraction(out, folded);
    }
    boolean startsWithDigit = Character.isDigit(folded.charAt(0));
    if (startsWithDigit && !isExponent(out)) {
      return false;
    }
    if (c == '\u207b' && !endsWithLetter(out)) {
      return false;
    }
    folded.codePoints().forEach(each -> out.appendCodePoint(plain(each)));
    return true;
  }

  private static boolean appendFraction(StringBuilder out, String folded) {
    if (folded.length() == 1) {
      out.append('/');
      return true;
    }
    if (folded.endsWith("\u2044")) {
      return false;
    }
    if (!out.isEmpty() && Character.isDigit(out.charAt(out.length() - 1))) {
      out.append(' ');
    }
    out.append(folded.replace(FRACTION_SLASH, '/'));
    return true;
  }

  // What Arabic keyboards and number formats put before a sign: it shows nothing.
  private static boolean isDirectionMark(int c) {
    return c == '\u061c' || c == '\u200e' || c == '\u200f';
  }

  /** A raised digit belongs to a unit only: directly after a letter, or after its raised minus. */
  private static boolean isExponent(StringBuilder out) {
    int last = out.length() - 1;
    if (last > 0 && out.charAt(last) == '-') {
      return Character.isLetter(out.charAt(last - 1));
    }
    return endsWithLetter(out);
  }

  private static boolean endsWithLetter(StringBuilder out) {
    return !out.isEmpty() && Character.isLetter(out.charAt(out.length() - 1));
  }

  // NFKC would take these apart into a space and a combining mark.
  private static int mark(int c) {
    return switch (c) {
      case '\u00b4', '\u02b9', '\u02bc', '\u066c' -> '\'';
      case '\u066a' -> '%';
      case '\u060c' -> ',';
      case '\u02dd', '\u02ba' -> '"';
      default -> c;
    };
  }

  private static int plain(int c) {
    return switch (c) {
      case '\u2215' -> '/';
      case '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2212' -> '-';
      case '\u2018', '\u2019', '\u2032' -> '\'';
      case '\u201c', '\u201d', '\u201e' -> '"';
      case '\u03bc', '\u00b5' -> 'u';
      default -> c;
    };
  }
}
