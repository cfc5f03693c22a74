package club.emberwell.web.sample;

import club.emberwell.tag.QrCode;
import club.emberwell.web.sample.SampleCard.Shows;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A label of {@link #WIDTH} by {@link #HEIGHT} mm, to be printed in true size.
 *
 * @param lines beside the square
 */
record Label(String code, QrCode square, List<Line> lines) {
  /** Millimetres; three abreast fit on A4 and on Letter. */
  static final int WIDTH = 62;

  static final int HEIGHT = 29;

  /** Side of the square, mm: a module of 0.8 mm is read by any phone. */
  private static final double SQUARE = 27;

  /** Characters of a line: what 32 mm hold in letters of 2.4 mm. */
  private static final int WIDE = 24;

  private static final double FIRST = 10.5;
  private static final double STEP = 3.05;
  private static final int MOST = 6;
  private static final int OF_TITLE = 2;

  /**
   * One line of text.
   *
   * @param y of its foot, mm
   */
  record Line(double y, String text) {}

  /** What is said most needed first: the work, the settings, the machine, where it is kept. */
  static Label of(SampleCard card, QrCode square) {
    Shows shows = card.shows();
    List<String> texts = new ArrayList<>(wrapped(card.title(), OF_TITLE));
    Stream.of(
            shows == null ? "" : shows.settings(),
            shows == null ? "" : shows.machine(),
            card.kept())
        .filter(text -> !text.isEmpty())
        .forEach(text -> texts.addAll(wrapped(text, Math.min(OF_TITLE, MOST - texts.size()))));
    List<Line> lines = new ArrayList<>();
    for (String text : texts) {
      lines.add(new Line(FIRST + STEP * lines.size(), text));
    }
    return new Label(card.code(), square, lines);
  }

  /** Millimetres of a module of the square. */
  public double getModule() {
    return SQUARE / square.side();
  }

  /** Lines that break between words; what does not fit ends in three dots. */
  static List<String> wrapped(String text, int most) {
    List<String> lines = new ArrayList<>();
    String rest = text.strip();
    while (!rest.isEmpty() && lines.size() < most) {
      boolean last = lines.size() == most - 1;
      int end = rest.length() <= WIDE ? rest.length() : last ? WIDE - 1 : breaking(rest);
      String line = rest.substring(0, end).strip();
      rest = rest.substring(end).strip();
      lines.add(last && !rest.isEmpty() ? line + "…" : line);
    }
    return lines;
  }

  private static int breaking(String text) {
    int space = text.lastIndexOf(' ', WIDE);
    return space > 0 ? space : WIDE;
  }
}
