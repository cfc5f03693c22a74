package club.emberwell.exchange;

import club.emberwell.exchange.drawing.Looks;
import club.emberwell.exchange.drawing.Sketch;
import club.emberwell.report.photo.PhotoWords;
import java.util.List;
import java.util.UUID;

/**
 * What is drawn of a result of the invented club.
 *
 * @param of what is shown: a row of {@code looks.csv}
 * @param base the colour of its coating or sheet in the invented model, or null
 * @param cut the edge of a cut instead of a mark
 * @param columns of a test grid; 0 where there is one trial
 * @param at where the dose of each trial lies in the window: -1 the least that is right, 1 the most
 * @param caption as its author would write it, or null
 */
record ScenarioPicture(
    String of, String base, boolean cut, int columns, List<Double> at, String caption) {
  /**
   * What to draw.
   *
   * @param above what it belongs to: two of the same look differ by it
   */
  Sketch sketch(UUID above) {
    int across = Math.max(1, columns);
    long seed = above.getMostSignificantBits() * 31 + above.getLeastSignificantBits();
    return new Sketch(of, base, cut, at.size() / across, across, at, seed ^ seed >>> 17);
  }

  /** Says in every word that it is drawn. */
  PhotoWords words(Looks looks, UUID above) {
    Sketch sketch = sketch(above);
    String seen =
        columns > 0
            ? "a test grid, %d rows of %d".formatted(sketch.rows(), sketch.columns())
            : cut ? cutEdge() : mark();
    return new PhotoWords(
        "Drawn: " + (caption == null ? looks.called(sketch) : caption),
        "Drawn, invented: %s, %s.".formatted(looks.called(sketch), seen));
  }

  private String cutEdge() {
    double place = at.get(0);
    return place < -1
        ? "cut but not through"
        : place > 1 ? "cut through, its edge charred or melted" : "cut through, its edge clean";
  }

  private String mark() {
    double place = at.get(0);
    return place < -1
        ? "the mark is faint and patchy"
        : place > 1 ? "the mark is overdone, its rim ragged" : "the mark is even";
  }
}
