package club.emberwell.catalog;

/**
 * The colour difference CIEDE2000 with kL = kC = kH = 1, after Sharma, Wu and Dalal, "The CIEDE2000
 * color-difference formula", Color Research and Application 30(1), 2005; equation numbers are
 * theirs.
 */
public final class Ciede2000 {
  private static final double POW25_7 = Math.pow(25, 7);

  private Ciede2000() {}

  /** Delta E00 of two colours; 0 = equal, about 1 = just noticeable. */
  public static double difference(Lab first, Lab second) {
    double chroma = (Math.hypot(first.a(), first.b()) + Math.hypot(second.a(), second.b())) / 2;
    double g = 0.5 * (1 - saturation(chroma)); // (4)
    double a1 = (1 + g) * first.a();
    double a2 = (1 + g) * second.a();
    double c1 = Math.hypot(a1, first.b());
    double c2 = Math.hypot(a2, second.b());
    double h1 = hue(a1, first.b());
    double h2 = hue(a2, second.b());
    boolean grey = c1 * c2 == 0;
    double hueStep = grey ? 0 : turn(h2 - h1); // (10)
    double dH = 2 * Math.sqrt(c1 * c2) * Math.sin(Math.toRadians(hueStep / 2)); // (11)
    double meanL = (first.l() + second.l()) / 2;
    double meanC = (c1 + c2) / 2;
    double meanH = grey ? h1 + h2 : meanHue(h1, h2); // (14)
    double lightness = (second.l() - first.l()) / lightnessWeight(meanL);
    double chromaStep = (c2 - c1) / (1 + 0.045 * meanC); // (17)
    double hueTerm = dH / (1 + 0.015 * meanC * hueWeight(meanH)); // (18)
    double rotation = -Math.sin(Math.toRadians(2 * rotationAngle(meanH))) * 2 * saturation(meanC);
    return Math.sqrt(
        lightness * lightness
            + chromaStep * chromaStep
            + hueTerm * hueTerm
            + rotation * chromaStep * hueTerm); // (22)
  }

  private static double saturation(double chroma) {
    double c7 = Math.pow(chroma, 7);
    return Math.sqrt(c7 / (c7 + POW25_7));
  }

  private static double hue(double a, double b) {
    double degrees = Math.toDegrees(Math.atan2(b, a));
    return degrees < 0 ? degrees + 360 : degrees;
  }

  private static double turn(double step) {
    if (step > 180) {
      return step - 360;
    }
    return step < -180 ? step + 360 : step;
  }

  private static double meanHue(double h1, double h2) {
    if (Math.abs(h1 - h2) <= 180) {
      return (h1 + h2) / 2;
    }
    return h1 + h2 < 360 ? (h1 + h2 + 360) / 2 : (h1 + h2 - 360) / 2;
  }

  private static double lightnessWeight(double meanL) {
    double square = (meanL - 50) * (meanL - 50);
    return 1 + 0.015 * square / Math.sqrt(20 + square); // (16)
  }

  private static double hueWeight(double meanH) {
    return 1 // (15)
        - 0.17 * cos(meanH - 30)
        + 0.24 * cos(2 * meanH)
        + 0.32 * cos(3 * meanH + 6)
        - 0.20 * cos(4 * meanH - 63);
  }

  private static double rotationAngle(double meanH) {
    double t = (meanH - 275) / 25;
    return 30 * Math.exp(-t * t); // (19)
  }

  private static double cos(double degrees) {
    return Math.cos(Math.toRadians(degrees));
  }
}
