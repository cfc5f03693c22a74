package club.emberwell.exchange.drawing;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferInt;

/**
 * A blank on a bench with what a laser left on it, as dark, as pale or as burnt as its dose lies in
 * the window. Needs neither a screen nor a font; takes some tens of milliseconds and two megabytes.
 */
public final class Drawing {
  /** Pixels. */
  public static final int WIDTH = 600;

  public static final int HEIGHT = 450;

  private static final int BAND = 36;

  /** The surfaces reckon in finer dots than are drawn. */
  private static final float DOTS = 1.2f;

  private static final float MIDDLE_X = WIDTH / 2f;
  private static final float MIDDLE_Y = (HEIGHT - BAND) / 2f;
  private static final double MOST_TURN = 0.07;

  private static final Tone[] BENCHES = {
    Tone.of("#4a4038"), Tone.of("#5c6165"), Tone.of("#8a8276"), Tone.of("#2f363b")
  };

  private final ValueNoise noise;
  private final Look look;
  private final Surface surface;
  private final Tone bench;
  private final float cos;
  private final float sin;

  private Drawing(Sketch sketch, Look look) {
    this.look = look;
    noise = new ValueNoise(sketch.seed());
    surface =
        sketch.cut()
            ? new CutSurface(look, noise, sketch.at().get(0).floatValue())
            : new MarkedSurface(look, noise, sketch);
    bench = BENCHES[(int) Math.floorMod(sketch.seed(), (long) BENCHES.length)];
    double turn = (noise.at(0.5f, 0.5f) - 0.5) * 2 * MOST_TURN;
    cos = (float) Math.cos(turn);
    sin = (float) Math.sin(turn);
  }

  /** What the laser left, seen from above. */
  interface Surface {
    /** Pixels to the edge of the blank, below 0 inside. */
    float blank(float x, float y);

    Tone tone(float x, float y);
  }

  /** Draws one. */
  public static BufferedImage of(Sketch sketch, Looks looks) {
    String name = sketch.cut() ? looks.cut(sketch.of()) : sketch.of();
    return new Drawing(sketch, looks.of(name, sketch.colour())).drawn();
  }

  private BufferedImage drawn() {
    BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    int[] pixels = ((DataBufferInt) picture.getRaster().getDataBuffer()).getData();
    for (int y = 0; y < HEIGHT - BAND; y++) {
      for (int x = 0; x < WIDTH; x++) {
        float fromMiddle = (x - MIDDLE_X) * DOTS;
        float down = (y - MIDDLE_Y) * DOTS;
        pixels[y * WIDTH + x] =
            seen(fromMiddle * cos + down * sin, down * cos - fromMiddle * sin).rgb();
      }
    }
    Graphics2D pen = picture.createGraphics();
    pen.setColor(new Color(0xF4F1EA));
    pen.fillRect(0, HEIGHT - BAND, WIDTH, BAND);
    pen.setColor(new Color(0x1B1B1B));
    Lettering.write(pen, "drawn, invented", 16, HEIGHT - BAND + 8);
    pen.dispose();
    return picture;
  }

  private Tone seen(float x, float y) {
    float away = surface.blank(x, y);
    float lamp = -(x + y) * 0.00018f;
    if (away <= -1) {
      return rim(away, x, y, surface.tone(x, y).lit(look.blank().texture().light(noise, x, y)))
          .lit(lamp);
    }
    float shade = Math.max(0, 1 - Math.max(0, surface.blank(x - 7, y - 9)) / 22) * 0.55f;
    Tone below = bench.lit(Texture.GRAIN.light(noise, x * 0.7f + 900, y * 0.7f)).lit(-shade);
    return (away >= 0 ? below : below.towards(surface.tone(x, y), -away)).lit(lamp);
  }

  /** The edge of the blank catches the light above and lies in shadow below. */
  private Tone rim(float away, float x, float y, Tone tone) {
    float near = 1 + away / 5;
    return near <= 0
        ? tone
        : tone.lit((surface.blank(x - 2, y - 2) - surface.blank(x + 2, y + 2)) * near * 0.03f);
  }
}
