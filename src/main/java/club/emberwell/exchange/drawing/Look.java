package club.emberwell.exchange.drawing;

import java.util.Map;
import java.util.NavigableMap;

/**
 * What a blank and a mark on it look like.
 *
 * @param called in words
 * @param relief how much of a step a mark makes, 0 to 1
 * @param marks by where the dose lies in the window
 */
record Look(
    String called,
    Blank blank,
    Texture markTexture,
    float relief,
    Tone halo,
    NavigableMap<Float, Tone> marks) {
  /**
   * What the laser has not touched.
   *
   * @param layers of its edge
   */
  record Blank(Shape shape, Texture texture, Tone base, int layers) {}

  enum Shape {
    CARD,
    ROUND,
    PLATE
  }

  Tone mark(float position) {
    Map.Entry<Float, Tone> below = marks.floorEntry(position);
    Map.Entry<Float, Tone> above = marks.ceilingEntry(position);
    if (below == null || above == null) {
      return (below == null ? marks.firstEntry() : marks.lastEntry()).getValue();
    }
    float width = above.getKey() - below.getKey();
    float share = width == 0 ? 0 : (position - below.getKey()) / width;
    return below.getValue().towards(above.getValue(), share);
  }

  Look withBase(Tone other) {
    return new Look(
        called,
        new Blank(blank.shape(), blank.texture(), other, blank.layers()),
        markTexture,
        relief,
        halo,
        marks);
  }
}
