package club.emberwell.grid.photo;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;

/** Photos drawn pixel by pixel through a known perspective, with known colours. */
public final class DrawnGrid {
  public static final int WIDTH = 900;
  public static final int HEIGHT = 700;
  public static final int BARE = 0x33507a;

  /** A blank seen from the lower left: straight, but no two sides alike. */
  public static final Corners SLANTED =
      new Corners(
          new Spot(0.22, 0.18), new Spot(0.83, 0.11), new Spot(0.91, 0.86), new Spot(0.12, 0.74));

  public static int colour(int row, int column) {
    return (40 + 30 * row) << 16 | (60 + 25 * column) << 8 | (70 + 20 * row);
  }

  /** Each pixel shows what lies at its middle on the blank. */
  static BufferedImage of(Corners corners, PhotoPlan plan, int noise) {
    List<Spot> seen = corners.all().stream().map(s -> s.scaled(WIDTH, HEIGHT)).toList();
    Homography toPlan = Homography.between(seen, plan.corners());
    Random random = new Random(4);
    BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
    for (int y = 0; y < HEIGHT; y++) {
      for (int x = 0; x < WIDTH; x++) {
        int rgb = at(toPlan.map(new Spot(x + 0.5, y + 0.5)), plan);
        picture.setRGB(x, y, noise == 0 ? rgb : noisy(rgb, noise, random));
      }
    }
    return picture;
  }

  private static int noisy(int rgb, int noise, Random random) {
    int out = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      int channel = (rgb >> shift & 0xff) + random.nextInt(2 * noise + 1) - noise;
      out |= Math.max(0, Math.min(255, channel)) << shift;
    }
    return out;
  }

  private static int at(Spot place, PhotoPlan plan) {
    double pitch = plan.cell() + plan.gap();
    int column = (int) Math.floor(place.x() / pitch);
    int row = (int) Math.floor(place.y() / pitch);
    boolean cell =
        column >= 0
            && row >= 0
            && column < plan.columns()
            && row < plan.rows()
            && place.x() - column * pitch < plan.cell()
            && place.y() - row * pitch < plan.cell();
    return cell ? colour(row, column) : BARE;
  }

  /** The same as a file. */
  public static byte[] png(PhotoPlan plan) {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      ImageIO.write(of(SLANTED, plan, 0), "png", bytes);
      return bytes.toByteArray();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Some grid. */
  public static byte[] png() {
    return png(new PhotoPlan(4, 5, 8, 2));
  }

  private DrawnGrid() {}
}
