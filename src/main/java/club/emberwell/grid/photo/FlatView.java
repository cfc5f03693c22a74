package club.emberwell.grid.photo;

import club.emberwell.catalog.Lab;
import club.emberwell.grid.photo.PhotoPlan.Area;
import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.List;

/**
 * The photo of a grid as if it had been taken from straight above: what lies at a place of the plan
 * is read between the four nearest pixels, in linear light.
 */
final class FlatView {
  private static final double[] LIGHT = light();
  private static final int CHANNELS = 3;

  /** Places read along a side of a cell: as many as it has pixels, within reason. */
  private static final int LEAST = 8;

  private static final int MOST = 64;

  private final PhotoPlan plan;
  private final BufferedImage picture;
  private final Homography toPicture;
  private final double step;

  FlatView(BufferedImage picture, Corners corners, PhotoPlan plan) {
    this.plan = plan;
    this.picture = picture;
    List<Spot> pixels =
        corners.all().stream()
            .map(spot -> spot.scaled(picture.getWidth(), picture.getHeight()))
            .toList();
    toPicture = Homography.between(plan.corners(), pixels);
    double longest =
        Math.max(pixels.get(0).distance(pixels.get(1)), pixels.get(1).distance(pixels.get(2)));
    double pixelsOfCell = longest / Math.max(plan.width(), plan.height()) * plan.cell();
    step = plan.cell() / Math.max(LEAST, Math.min(MOST, pixelsOfCell));
  }

  private static double[] light() {
    double[] light = new double[256];
    for (int i = 0; i < light.length; i++) {
      light[i] = Lab.linear(i);
    }
    return light;
  }

  /** How far two neighbouring places that are read lie apart on the plan. */
  double step() {
    return step;
  }

  /** All cells with their gaps. */
  BufferedImage whole() {
    int across = (int) Math.ceil(plan.width() / step);
    int down = (int) Math.ceil(plan.height() / step);
    BufferedImage whole = new BufferedImage(across, down, BufferedImage.TYPE_INT_RGB);
    double[] light = new double[CHANNELS];
    for (int y = 0; y < down; y++) {
      for (int x = 0; x < across; x++) {
        Arrays.fill(light, 0);
        Spot at = new Spot((x + 0.5) / across * plan.width(), (y + 0.5) / down * plan.height());
        add(toPicture.map(at), light);
        whole.setRGB(x, y, rgb(light));
      }
    }
    return whole;
  }

  private static int rgb(double[] light) {
    int rgb = 0;
    for (double channel : light) {
      rgb = rgb << 8 | shade(channel);
    }
    return rgb;
  }

  /** The channel whose light is nearest. */
  private static int shade(double light) {
    int found = Arrays.binarySearch(LIGHT, light);
    if (found >= 0) {
      return found;
    }
    int above = Math.min(LIGHT.length - 1, -found - 1);
    return above > 0 && light - LIGHT[above - 1] < LIGHT[above] - light ? above - 1 : above;
  }

  /** The mean colour of parts of the plan; null where less than half of them is in the photo. */
  Lab mean(List<Area> areas) {
    double[] sum = new double[CHANNELS];
    int read = 0;
    int asked = 0;
    for (Area area : areas) {
      int across = (int) Math.ceil((area.right() - area.left()) / step);
      int down = (int) Math.ceil((area.bottom() - area.top()) / step);
      for (int j = 0; j < down; j++) {
        for (int i = 0; i < across; i++) {
          Spot at =
              new Spot(
                  area.left() + (i + 0.5) / across * (area.right() - area.left()),
                  area.top() + (j + 0.5) / down * (area.bottom() - area.top()));
          read += add(toPicture.map(at), sum) ? 1 : 0;
          asked++;
        }
      }
    }
    return 2 * read < asked || read == 0
        ? null
        : Lab.ofLinear(sum[0] / read, sum[1] / read, sum[2] / read);
  }

  /** Adds the light at a place of the picture, in pixels; false outside of it. */
  private boolean add(Spot at, double[] sum) {
    int width = picture.getWidth();
    int height = picture.getHeight();
    if (at.x() < 0 || at.y() < 0 || at.x() > width || at.y() > height) {
      return false;
    }
    // a pixel's colour is that of its middle
    double x = Math.max(0, Math.min(width - 1.0, at.x() - 0.5));
    double y = Math.max(0, Math.min(height - 1.0, at.y() - 0.5));
    int left = (int) x;
    int top = (int) y;
    int right = Math.min(width - 1, left + 1);
    int bottom = Math.min(height - 1, top + 1);
    double across = x - left;
    double down = y - top;
    add(picture.getRGB(left, top), (1 - across) * (1 - down), sum);
    add(picture.getRGB(right, top), across * (1 - down), sum);
    add(picture.getRGB(left, bottom), (1 - across) * down, sum);
    add(picture.getRGB(right, bottom), across * down, sum);
    return true;
  }

  private static void add(int rgb, double weight, double[] sum) {
    sum[0] += weight * LIGHT[rgb >> 16 & 0xff];
    sum[1] += weight * LIGHT[rgb >> 8 & 0xff];
    sum[2] += weight * LIGHT[rgb & 0xff];
  }
}
