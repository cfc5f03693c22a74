package club.emberwell.exchange.drawing;

/**
 * A colour and how much of what is below it covers.
 *
 * @param red 0 to 255, as the others
 * @param cover 0 to 1
 */
record Tone(float red, float green, float blue, float cover) {
  /** As written: {@code #dcbf8e} or {@code #dcbf8e/0.5}. */
  static Tone of(String written) {
    String[] parts = written.split("/");
    int rgb = Integer.parseInt(parts[0].substring(1), 16);
    float cover = parts.length > 1 ? Float.parseFloat(parts[1]) : 1;
    return new Tone(rgb >> 16 & 255, rgb >> 8 & 255, rgb & 255, cover);
  }

  Tone towards(Tone other, float share) {
    return new Tone(
        red + (other.red - red) * share,
        green + (other.green - green) * share,
        blue + (other.blue - blue) * share,
        cover + (other.cover - cover) * share);
  }

  /**
   * The same in other light.
   *
   * @param by 0 as it is, -1 black, 1 white
   */
  Tone lit(float by) {
    float to = by < 0 ? 0 : 255;
    float share = Math.min(1, Math.abs(by));
    return new Tone(
        red + (to - red) * share, green + (to - green) * share, blue + (to - blue) * share, cover);
  }

  int rgb() {
    return channel(red) << 16 | channel(green) << 8 | channel(blue);
  }

  private static int channel(float value) {
    return Math.max(0, Math.min(255, Math.round(value)));
  }
}
