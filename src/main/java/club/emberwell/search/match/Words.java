package club.emberwell.search.match;

import club.emberwell.catalog.Folding;
import club.emberwell.search.query.SearchLimits;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Texts as words, folded like the vocabulary's spellings. Neighbours are joined too, so that
 * "powder coat", "powder-coat" and "powdercoat" find each other.
 */
public final class Words {
  /** How many words together may mean one thing. */
  static final int PHRASE = 4;

  /** What says nothing about a result. */
  private static final Set<String> FILLERS =
      Set.of(
          "a", "an", "and", "at", "by", "for", "from", "i", "in", "it", "my", "of", "on", "or",
          "the", "to", "with");

  /** Units that are written to a number with a space or without. */
  private static final Pattern GLUED =
      Pattern.compile("(\\d+)(mm|cm|um|μm|nm|in|inch|mil|w|kw|hz|khz|mhz|ns|ps|fs|us|dpi|lpi)");

  private final Folding folding;

  public Words(Folding folding) {
    this.folding = folding;
  }

  /** A number and its unit are two words, however they are written: "3mm" is "3 mm". */
  private List<String> words(String text) {
    List<String> all = new ArrayList<>();
    for (String word : folding.words(text)) {
      Matcher glued = GLUED.matcher(word);
      if (glued.matches()) {
        all.add(glued.group(1));
        all.add(glued.group(2));
      } else {
        all.add(word);
      }
    }
    return all;
  }

  /** The words somebody looks for, in order; fillers are left out unless there is nothing else. */
  public List<String> wanted(String text) {
    String read = text.substring(0, Math.min(text.length(), SearchLimits.TEXT));
    List<String> all = cut(words(read), SearchLimits.WORDS * 2);
    List<String> telling = all.stream().filter(word -> !FILLERS.contains(word)).toList();
    return cut(telling.isEmpty() ? all : telling, SearchLimits.WORDS);
  }

  /** Adds the words of a text and its joined neighbours; null adds nothing. */
  public void addTo(Collection<String> found, String text) {
    if (text == null) {
      return;
    }
    String before = null;
    for (String word : cut(words(text), SearchLimits.NOTE_WORDS)) {
      if (word.length() > SearchLimits.WORD) {
        before = null;
        continue;
      }
      found.add(word);
      if (before != null && before.length() + word.length() <= SearchLimits.WORD) {
        found.add(before + word);
      }
      before = word;
    }
  }

  /** Adds a text as one word, however many it has. */
  public void addWhole(Collection<String> found, String text) {
    String whole = folding.fold(text);
    if (!whole.isEmpty() && whole.length() <= SearchLimits.WORD) {
      found.add(whole);
    }
  }

  private static List<String> cut(List<String> words, int most) {
    return words.size() > most ? words.subList(0, most) : words;
  }
}
