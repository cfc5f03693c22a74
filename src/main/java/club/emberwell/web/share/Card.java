package club.emberwell.web.share;

import club.emberwell.web.plot.DosePlot;
import java.util.List;

/**
 * What the picture of a page shows, cut to what fits; equal cards are one picture.
 *
 * @param club its name
 * @param title what the page is about
 * @param lead the one thing to know of it, as a start or a result
 * @param lines what else, one each
 * @param plot drawn below; null where there is none
 */
record Card(String club, String title, String lead, List<String> lines, DosePlot plot) {
  static final int TITLE = 90;
  static final int LEAD = 80;
  static final int LINE = 110;
  static final int LINES = 3;
  private static final int CLUB = 60;

  Card {
    club = cut(club, CLUB);
    title = cut(title, TITLE);
    lead = cut(lead, LEAD);
    lines =
        lines.stream()
            .filter(line -> line != null && !line.isBlank())
            .limit(LINES)
            .map(line -> cut(line, LINE))
            .toList();
  }

  /** One line of at most so many characters, without what is no text. */
  private static String cut(String text, int most) {
    String plain = text.replaceAll("[\\p{C}\\s]+", " ").strip();
    if (plain.codePointCount(0, plain.length()) <= most) {
      return plain;
    }
    return plain.substring(0, plain.offsetByCodePoints(0, most - 1)).strip() + "…";
  }
}
