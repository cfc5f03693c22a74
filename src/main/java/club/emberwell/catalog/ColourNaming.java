package club.emberwell.catalog;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Which of our colour words a colour is: a word by its spelling, a hex code or a CSS Color 4 name
 * by the nearest anchor (CIEDE2000). The text as written is the caller's to keep.
 */
public final class ColourNaming {
  private static final Pattern HEX = Pattern.compile("#?([0-9a-fA-F]{3}|[0-9a-fA-F]{6})");

  private final Vocabulary vocabulary;
  private final Map<String, Integer> cssNames;
  private final List<Anchor> anchors;

  private record Anchor(Term term, Lab lab) {}

  /**
   * A colour word and how far the colour is from its anchor.
   *
   * @param distance Delta E00; 0 where the word itself was written
   */
  public record Named(Term term, double distance) {}

  /**
   * @param cssNames lower-case names to 0xRRGGBB
   */
  public ColourNaming(Vocabulary vocabulary, Map<String, Integer> cssNames) {
    this.vocabulary = vocabulary;
    this.cssNames = Map.copyOf(cssNames);
    this.anchors =
        vocabulary.terms(TermKind.COLOUR).stream()
            .filter(term -> term.hex() != null && !term.deprecated())
            .map(term -> new Anchor(term, Lab.ofRgb(rgb(term.hex()).orElseThrow())))
            .toList();
  }

  /** Empty where the text is neither one of our words nor a hex code nor a CSS name. */
  public Optional<Named> name(String text) {
    Optional<Term> word = vocabulary.resolve(TermKind.COLOUR, text).term();
    if (word.isPresent()) {
      return word.map(term -> new Named(term, 0));
    }
    return rgb(text).or(() -> css(text)).flatMap(this::nearest);
  }

  /** The nearest anchor of an sRGB colour 0xRRGGBB; empty only where there are no anchors. */
  public Optional<Named> nearest(int rgb) {
    Lab lab = Lab.ofRgb(rgb);
    return anchors.stream()
        .map(anchor -> new Named(anchor.term(), Ciede2000.difference(anchor.lab(), lab)))
        .min(Comparator.comparingDouble(Named::distance).thenComparing(n -> n.term().slug()));
  }

  /** The hex code inside a text, with three or six digits; the # may be left out before six. */
  public static Optional<Integer> rgb(String text) {
    String stripped = text.strip();
    if (!HEX.matcher(stripped).matches() || stripped.length() == 3) {
      return Optional.empty();
    }
    String digits = stripped.startsWith("#") ? stripped.substring(1) : stripped;
    if (digits.length() == 3) {
      digits = digits.replaceAll("(.)", "$1$1");
    }
    return Optional.of(Integer.parseInt(digits, 16));
  }

  private Optional<Integer> css(String text) {
    String key = text.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", "");
    return Optional.ofNullable(cssNames.get(key));
  }
}
