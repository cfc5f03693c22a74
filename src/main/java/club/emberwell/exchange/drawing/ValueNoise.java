package club.emberwell.exchange.drawing;

/** Smooth noise in the plane, the same for the same seed everywhere. */
final class ValueNoise {
  private final int seed;

  ValueNoise(long seed) {
    this.seed = Long.hashCode(seed * 0x9E3779B97F4A7C15L);
  }

  /** 0 to 1, changing over about one unit of x and y. */
  float at(float x, float y) {
    int left = (int) Math.floor(x);
    int top = (int) Math.floor(y);
    float fx = smooth(x - left);
    float fy = smooth(y - top);
    float upper = mix(corner(left, top), corner(left + 1, top), fx);
    float lower = mix(corner(left, top + 1), corner(left + 1, top + 1), fx);
    return mix(upper, lower, fy);
  }

  private float corner(int x, int y) {
    int h = seed + x * 0x27D4EB2D + y * 0x165667B1;
    h = (h ^ h >>> 15) * 0x2C1B3C6D;
    h = (h ^ h >>> 12) * 0x297A2D39;
    return (h ^ h >>> 15) / (float) Integer.MAX_VALUE * 0.5f + 0.5f;
  }

  private static float smooth(float t) {
    return t * t * (3 - 2 * t);
  }

  private static float mix(float a, float b, float share) {
    return a + (b - a) * share;
  }
}
