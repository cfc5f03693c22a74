package club.emberwell.grid.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.Ciede2000;
import club.emberwell.catalog.Lab;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Photos drawn pixel by pixel through a known perspective, with known colours. */
class GridColoursTest {
  private static final int WIDTH = 900;
  private static final int HEIGHT = 700;
  private static final int BARE = 0x33507a;

  /** What 8 bits a channel and the rims of pixels leave: far below a just noticeable difference. */
  private static final double TOLERANCE = 0.35;

  /** A blank seen from the lower left: straight, but no two sides alike. */
  private static final Corners SLANTED =
      new Corners(
          new Spot(0.22, 0.18), new Spot(0.83, 0.11), new Spot(0.91, 0.86), new Spot(0.12, 0.74));

  private static int colour(int row, int column) {
    return (40 + 30 * row) << 16 | (60 + 25 * column) << 8 | (70 + 20 * row);
  }

  /** Each pixel shows what lies at its middle on the blank. */
  private static BufferedImage drawn(Corners corners, PhotoPlan plan, int noise) {
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

  private static void assertColours(GridColours read, double tolerance) {
    assertTrue(Ciede2000.difference(Lab.ofRgb(BARE), read.bare()) < tolerance);
    for (GridColours.Cell cell : read.cells()) {
      Lab known = Lab.ofRgb(colour(cell.row(), cell.column()));
      assertTrue(Ciede2000.difference(known, cell.colour()) < tolerance, cell.toString());
      assertEquals(Ciede2000.difference(Lab.ofRgb(BARE), known), cell.distance(), 2 * tolerance);
    }
  }

  @Test
  void coloursAreFoundAgainThroughPerspective() {
    PhotoPlan plan = new PhotoPlan(5, 6, 8, 1.5);
    GridColours read = GridColours.of(drawn(SLANTED, plan, 0), SLANTED, plan);
    assertEquals(30, read.cells().size());
    assertColours(read, TOLERANCE);
  }

  @Test
  void aPhotoThatIsTurnedIsReadInTheOrderOfThePlan() {
    PhotoPlan plan = new PhotoPlan(4, 3, 8, 2);
    Corners turned =
        new Corners(
            SLANTED.topRight(), SLANTED.bottomRight(), SLANTED.bottomLeft(), SLANTED.topLeft());
    assertNull(turned.fault(WIDTH, HEIGHT, plan));
    assertColours(GridColours.of(drawn(turned, plan, 0), turned, plan), TOLERANCE);
  }

  @Test
  void withoutGapsTheFrameRoundTheCellsIsTheBareSurface() {
    PhotoPlan plan = new PhotoPlan(2, 2, 8, 0);
    assertColours(GridColours.of(drawn(SLANTED, plan, 0), SLANTED, plan), TOLERANCE);
  }

  @Test
  void withNothingBareInThePhotoThereIsColourButNoDistance() {
    PhotoPlan plan = new PhotoPlan(2, 2, 8, 0);
    Corners whole = new Corners(new Spot(0, 0), new Spot(1, 0), new Spot(1, 1), new Spot(0, 1));
    GridColours read = GridColours.of(drawn(whole, plan, 0), whole, plan);
    assertNull(read.bare());
    assertTrue(read.cells().stream().allMatch(c -> c.colour() != null && c.distance() == null));
  }

  /** Grain of +-12 of 255 averages out over a cell. */
  @Test
  void grainAveragesOut() {
    PhotoPlan plan = new PhotoPlan(5, 6, 8, 1.5);
    assertColours(GridColours.of(drawn(SLANTED, plan, 12), SLANTED, plan), 1);
  }

  /** Corners set four pixels off still read the insides of the cells. */
  @Test
  void cornersOffByALittleChangeNothing() {
    PhotoPlan plan = new PhotoPlan(5, 6, 8, 1.5);
    Corners off =
        new Corners(
            new Spot(0.22 + 4.0 / WIDTH, 0.18 - 4.0 / HEIGHT),
            new Spot(0.83 - 4.0 / WIDTH, 0.11 + 4.0 / HEIGHT),
            new Spot(0.91 + 4.0 / WIDTH, 0.86),
            new Spot(0.12, 0.74 - 4.0 / HEIGHT));
    assertColours(GridColours.of(drawn(SLANTED, plan, 0), off, plan), 1);
  }
}
