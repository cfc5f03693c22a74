package club.emberwell.exchange.drawing;

/**
 * Shapes as distances: pixels to their edge, below 0 inside. The origin is the middle of the blank,
 * x to the right and y down.
 */
final class Figure {
  private static final float[] BARS = {10, 7, 4.5f, 3, 1.5f};
  private static final float[] BAR_AT = {38, 76, 108, 134, 156};

  private final Sketch sketch;
  private final Look.Shape shape;
  private final float scale;
  private final float pitch;

  Figure(Sketch sketch, Look.Shape shape) {
    this.sketch = sketch;
    this.shape = shape;
    scale = shape == Look.Shape.ROUND ? 0.8f : 1;
    pitch = Math.min(460f / sketch.columns(), 330f / sketch.rows()) * scale;
  }

  /** Faster than {@link Math#hypot}, whose care for tiny and huge numbers pixels do not need. */
  static float length(float x, float y) {
    return (float) Math.sqrt(x * x + y * y);
  }

  static float box(float x, float y, float halfWidth, float halfHeight, float round) {
    return corner(Math.abs(x) - halfWidth + round, Math.abs(y) - halfHeight + round) - round;
  }

  /** From a corner whose two sides are that far away. */
  private static float corner(float dx, float dy) {
    float inside = Math.max(dx, dy);
    return inside <= 0 ? inside : length(Math.max(dx, 0), Math.max(dy, 0));
  }

  float blank(float x, float y) {
    return switch (shape) {
      case ROUND -> length(x, y) - 226;
      case CARD -> box(x, y, 286, 208, 8);
      case PLATE -> box(x, y, 270, 200, 28);
    };
  }

  /** Whatever the laser touched. */
  float mark(float x, float y) {
    if (sketch.at().size() == 1) {
      float across = (sketch.seed() & 4) == 0 ? x / scale : -x / scale;
      return motif(across, y / scale) * scale;
    }
    return box(
        fromCell(x, sketch.columns()), fromCell(y, sketch.rows()), 0.4f * pitch, 0.4f * pitch, 2);
  }

  /** How far heat is seen beside a mark, pixels. */
  float reach() {
    return sketch.at().size() == 1 ? 60 : 0.1f * pitch;
  }

  private float motif(float x, float y) {
    return switch ((int) Math.floorMod(sketch.seed() >> 3, 4L)) {
      case 0 -> leaf(x, y);
      case 1 -> badge(x, y);
      default -> patch(x, y);
    };
  }

  /** Two arcs with veins left out. */
  private static float leaf(float x, float y) {
    float lean = x * 0.94f + y * 0.34f;
    float up = y * 0.94f - x * 0.34f;
    float side = Math.abs(lean);
    float arcs = length(side + 118, up) - 196;
    float vein = Math.abs(Math.floorMod(Math.round((up + 0.8f * side) * 8), 288) / 8f - 18) * 0.75f;
    float stem = Math.max(side - 2.5f, Math.abs(up - 176) - 24);
    return Math.min(stem, Math.max(arcs, Math.max(2.5f - side, 2 - vein)));
  }

  /** Rings, a disc and dots round it. */
  private static float badge(float x, float y) {
    float radius = length(x, y);
    float rings = Math.min(Math.abs(radius - 140) - 9, Math.abs(radius - 122) - 2);
    float others = Math.min(rings, radius - 62);
    // no dot is nearer than its circle: angles are dear, and most pixels need none
    return Math.abs(radius - 96) - 9 >= others ? others : Math.min(dots(x, y, radius), others);
  }

  private static float dots(float x, float y, float radius) {
    double turn = Math.atan2(y, x) / Math.PI * 6;
    float along = (float) ((turn - Math.rint(turn)) * Math.PI / 6 * radius);
    return length(along, radius - 96) - 9;
  }

  /** A fill, bars of falling width and a ring. */
  private static float patch(float x, float y) {
    float fill = box(x + 105, y + 5, 95, 105, 2);
    float besideBars = Float.MAX_VALUE;
    for (int i = 0; i < BARS.length; i++) {
      besideBars = Math.min(besideBars, Math.abs(x - BAR_AT[i]) - BARS[i]);
    }
    float bars = corner(besideBars, Math.abs(y + 45) - 65);
    float radius = length(x - 96, y - 68);
    float ring = Math.min(Math.abs(radius - 30) - 3, radius - 7);
    return Math.min(Math.min(fill, bars), ring);
  }

  /** How far a place is from the middle of its cell. */
  private float fromCell(float at, int cells) {
    return at - (cell(at, cells) - (cells - 1) / 2f) * pitch;
  }

  private int cell(float at, int cells) {
    int cell = Math.round(at / pitch + (cells - 1) / 2f);
    return Math.max(0, Math.min(cells - 1, cell));
  }

  /** Which trial this place is of, as {@link Sketch#at()} counts them. */
  int trial(float x, float y) {
    return sketch.at().size() == 1
        ? 0
        : cell(y, sketch.rows()) * sketch.columns() + cell(x, sketch.columns());
  }
}
