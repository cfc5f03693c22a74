package club.emberwell.catalog;

import java.util.ArrayList;
import java.util.List;

/** How far a mistyped text is from a known spelling: edits, relative to the longer of the two. */
public final class Nearness {
  // A text that merely contains a spelling of this length is near it ("black acrylic sheet").
  private static final int CONTAINED = 4;
  private static final double CONTAINED_DISTANCE = 0.3;

  private final List<String> words;
  private final String text;

  public Nearness(List<String> words) {
    this.words = words;
    this.text = String.join("", words);
  }

  /** 0 = equal, 1 = nothing in common. */
  public double to(String spelling) {
    int longer = Math.max(text.length(), spelling.length());
    if (longer == 0) {
      return 1;
    }
    if (words.contains(spelling) || spelling.length() >= CONTAINED && text.contains(spelling)) {
      return Math.min(byEdits(spelling, longer), byContent(spelling, longer));
    }
    return isOf(words, spelling)
        ? Math.min(byEdits(spelling, longer), byContent(spelling, longer))
        : byEdits(spelling, longer);
  }

  /** Whether a spelling is made of these words in any order: "plywood, birch" is birch plywood. */
  private static boolean isOf(List<String> words, String spelling) {
    if (spelling.isEmpty()) {
      return true;
    }
    for (int at = 0; at < words.size(); at++) {
      if (spelling.startsWith(words.get(at))) {
        List<String> others = new ArrayList<>(words);
        others.remove(at);
        if (isOf(others, spelling.substring(words.get(at).length()))) {
          return true;
        }
      }
    }
    return false;
  }

  private static double byContent(String spelling, int longer) {
    return CONTAINED_DISTANCE * (1 - spelling.length() / (double) longer);
  }

  // The difference in length alone is a lower bound: most spellings need no closer look.
  private double byEdits(String spelling, int longer) {
    double least = Math.abs(text.length() - spelling.length()) / (double) longer;
    boolean tooFar = least > CatalogLimits.SUGGESTION_DISTANCE;
    return tooFar ? least : edits(text, spelling) / (double) longer;
  }

  /** Optimal string alignment: insert, delete, replace, swap of neighbours. */
  static int edits(String a, String b) {
    int[][] d = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          d[i][j] = i + j;
          continue;
        }
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        d[i][j] = Math.min(d[i - 1][j - 1] + change, Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1));
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
        }
      }
    }
    return d[a.length()][b.length()];
  }
}
