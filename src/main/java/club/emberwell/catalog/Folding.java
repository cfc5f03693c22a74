package club.emberwell.catalog;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Makes spellings of one word equal: case, accents, hyphens, spaces, plurals, and the word variants
 * of {@code shared/vocabulary/spellings.yaml} (British and American, common misspellings).
 */
public final class Folding {
  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern NOT_WORD = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern LONG_PLURAL = Pattern.compile("(x|ch|sh|ss|zz)es$");
  private static final Pattern NO_PLURAL = Pattern.compile("(ss|us|is)$");
  private static final Pattern THICKNESS =
      Pattern.compile(
          "(?iu)(?<![\\p{L}\\p{N}])((\\d+\\s+)?\\d+([.,/]\\d+)?\\s*"
              + "(mm|cm|millimet(er|re)s?|inch(es)?|in\\b|mil\\b|ga(uge)?\\b|\"|″|”))"
              + "(\\s*thick)?");

  /** Group of {@link #THICKNESS}. */
  private static final int QUANTITY = 1;

  private final Map<String, String> variants;
  private final Set<String> fillers;
  private final Map<String, Thing> things;

  /**
   * @param variants single words to the word they stand for, both lower-case without accents
   * @param fillers words that say nothing about which material it is ("sheet", "blank")
   * @param things by the word for each, lower-case without accents
   */
  public Folding(
      Map<String, String> variants, Collection<String> fillers, Map<String, Thing> things) {
    this.variants = Map.copyOf(variants);
    this.fillers =
        fillers.stream().map(Folding::plain).map(Folding::singular).collect(Collectors.toSet());
    this.things =
        things.entrySet().stream()
            .collect(
                Collectors.toUnmodifiableMap(each -> singular(each.getKey()), Map.Entry::getValue));
  }

  /** What a folded word may be made of, if it is the word for a thing. */
  public Optional<Thing> thing(String word) {
    return Optional.ofNullable(things.get(word));
  }

  /** The key under which a text is looked up; empty where it holds no letter and no digit. */
  public String fold(String text) {
    return String.join("", words(text));
  }

  /** The folded words, in order. */
  public List<String> words(String text) {
    List<String> words = new ArrayList<>();
    for (String word : NOT_WORD.split(plain(text))) {
      if (!word.isEmpty()) {
        words.add(variant(word));
      }
    }
    return words;
  }

  /** The text without any thickness in it ("3mm birch ply" gives "birch ply"). */
  public static String withoutThickness(String text) {
    return withoutThickness(text, thickness -> true);
  }

  /**
   * The text without those of its thicknesses that are taken.
   *
   * @param taken asked of each as it is written: "3mm" of "3mm thick birch ply"
   */
  public static String withoutThickness(String text, Predicate<String> taken) {
    return THICKNESS
        .matcher(text)
        .replaceAll(
            found ->
                taken.test(found.group(QUANTITY).strip())
                    ? " "
                    : Matcher.quoteReplacement(found.group()))
        .strip();
  }

  /** The words that are left without fillers ("solid walnut blanks" gives "walnut"). */
  public String withoutFillers(String text) {
    return words(text).stream()
        .filter(word -> !fillers.contains(word))
        .collect(Collectors.joining(" "));
  }

  private String variant(String word) {
    String direct = variants.get(word);
    if (direct != null) {
      return singular(direct);
    }
    String single = singular(word);
    return singular(variants.getOrDefault(single, single));
  }

  private static String plain(String text) {
    String decomposed = Normalizer.normalize(text, Normalizer.Form.NFKD);
    return MARKS
        .matcher(decomposed)
        .replaceAll("")
        .toLowerCase(Locale.ROOT)
        .replace("ß", "ss")
        .replace("æ", "ae")
        .replace("œ", "oe")
        .replace("ø", "o")
        .replace("ł", "l")
        .replace("'", "")
        .replace("’", "");
  }

  // Applied to both sides of every comparison, so it need be consistent, not right.
  private static String singular(String word) {
    if (word.length() <= 3) {
      return word;
    }
    if (word.endsWith("ies") && word.length() > 4) {
      return word.substring(0, word.length() - 3) + "y";
    }
    if (LONG_PLURAL.matcher(word).find()) {
      return word.substring(0, word.length() - 2);
    }
    if (word.endsWith("s") && !NO_PLURAL.matcher(word).find()) {
      return word.substring(0, word.length() - 1);
    }
    return word;
  }
}
