package club.emberwell.catalog;

/**
 * A colour in CIELAB, reference white D65, 2 degree observer.
 *
 * @param l lightness 0..100
 * @param a green - to red +
 * @param b blue - to yellow +
 */
public record Lab(double l, double a, double b) {
  // IEC 61966-2-1 (sRGB) to XYZ, Y of white = 1
  private static final double[][] TO_XYZ = {
    {0.4124564, 0.3575761, 0.1804375},
    {0.2126729, 0.7151522, 0.0721750},
    {0.0193339, 0.1191920, 0.9503041}
  };
  private static final double[] WHITE = {0.95047, 1, 1.08883};
  private static final double EPSILON = 216.0 / 24389;
  private static final double KAPPA = 24389.0 / 27;

  /**
   * @param rgb 0xRRGGBB, sRGB
   */
  public static Lab ofRgb(int rgb) {
    return ofLinear(linear(rgb >> 16), linear(rgb >> 8), linear(rgb));
  }

  /** The colour of linear sRGB light, each channel 0..1. */
  public static Lab ofLinear(double red, double green, double blue) {
    double[] linear = {red, green, blue};
    double[] f = new double[3];
    for (int i = 0; i < 3; i++) {
      double sum = 0;
      for (int j = 0; j < 3; j++) {
        sum += TO_XYZ[i][j] * linear[j];
      }
      f[i] = compressed(sum / WHITE[i]);
    }
    return new Lab(116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2]));
  }

  /**
   * The light of an sRGB channel, 0..1 (IEC 61966-2-1).
   *
   * @param channel its lowest eight bits
   */
  public static double linear(int channel) {
    double c = (channel & 0xff) / 255.0;
    return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
  }

  private static double compressed(double t) {
    return t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116;
  }
}
