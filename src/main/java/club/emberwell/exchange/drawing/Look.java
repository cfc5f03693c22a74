package club.emberwell.exchange.drawing;

import java.util.Map;
import java.util.NavigableMap;

/**
 * What a blank and a mark on it look like.
 *
 * @param relief how much of a step a mark makes, 0 to 1
 * @param layers of its edge
 * @param marks by where the dose lies in the window
 */
record Look(
    Shape shape,
    Texture texture,
    Tone base,
    Texture markTexture,
    float relief,
    Tone halo,
    int layers,
    NavigableMap<Float, Tone> marks) {
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
    return new Look(shape, texture, other, markTexture, relief, halo, layers, marks);
  }
}
