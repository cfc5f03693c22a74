package club.emberwell.exchange.drawing;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;

/** The blanks that can be drawn, as {@code looks.csv} of the invented club describes them. */
public final class Looks {
  private static final String COLOURS = "=";

  private final Map<String, Look> looks = new HashMap<>();
  private final Map<String, Tone> colours = new HashMap<>();

  /**
   * @param rows its cells without the heading
   */
  public Looks(List<String[]> rows) {
    for (String[] cell : rows) {
      if (cell[0].equals(COLOURS)) {
        each(cell[9]).forEach(part -> colours.put(part[0], Tone.of(part[1])));
      } else {
        looks.put(cell[0], look(cell));
      }
    }
  }

  private static Look look(String[] cell) {
    NavigableMap<Float, Tone> marks = new TreeMap<>();
    each(cell[9]).forEach(part -> marks.put(Float.valueOf(part[0]), Tone.of(part[1])));
    Look.Blank blank =
        new Look.Blank(
            Look.Shape.valueOf(cell[2].toUpperCase(Locale.ROOT)),
            Texture.valueOf(cell[3].toUpperCase(Locale.ROOT)),
            Tone.of(cell[4]),
            Integer.parseInt(cell[8]));
    return new Look(
        cell[1],
        blank,
        Texture.valueOf(cell[5].toUpperCase(Locale.ROOT)),
        Float.parseFloat(cell[6]),
        Tone.of(cell[7]),
        marks);
  }

  private static List<String[]> each(String cell) {
    return Arrays.stream(cell.split("\\|")).map(part -> part.split("=")).toList();
  }

  /** What is shown in words, with the colour of its coating or sheet where it has one. */
  public String called(Sketch sketch) {
    String called = of(sketch.of(), null).called();
    return sketch.colour() == null ? called : sketch.colour() + " " + called;
  }

  /** Which look the edge of a cut has: its own, or that of the blank. */
  String cut(String name) {
    String own = name + " cut";
    return looks.containsKey(own) ? own : name;
  }

  /**
   * The look of one blank.
   *
   * @param colour of its coating or sheet, or null
   * @throws IllegalArgumentException where nothing is said of it
   */
  Look of(String name, String colour) {
    Look look = looks.get(name);
    if (look == null) {
      throw new IllegalArgumentException("no look of " + name);
    }
    return colour == null || !colours.containsKey(colour)
        ? look
        : look.withBase(colours.get(colour));
  }
}
