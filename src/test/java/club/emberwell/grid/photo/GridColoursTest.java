package club.emberwell.grid.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.Ciede2000;
import club.emberwell.catalog.Lab;
import org.junit.jupiter.api.Test;

/** Colours found again in photos that were drawn, see {@link DrawnGrid}. */
class GridColoursTest {
  /** What 8 bits a channel and the rims of pixels leave: far below a just noticeable difference. */
  private static final double TOLERANCE = 0.35;

  private static void assertColours(GridColours read, double tolerance) {
    assertTrue(Ciede2000.difference(Lab.ofRgb(DrawnGrid.BARE), read.bare()) < tolerance);
    for (GridColours.Cell cell : read.cells()) {
      Lab known = Lab.ofRgb(DrawnGrid.colour(cell.row(), cell.column()));
      assertTrue(Ciede2000.difference(known, cell.colour()) < tolerance, cell.toString());
      assertEquals(
          Ciede2000.difference(Lab.ofRgb(DrawnGrid.BARE), known), cell.distance(), 2 * tolerance);
    }
  }

  @Test
  void coloursAreFoundAgainThroughPerspective() {
    PhotoPlan plan = new PhotoPlan(5, 6, 8, 1.5);
    GridColours read =
        GridColours.of(DrawnGrid.of(DrawnGrid.SLANTED, plan, 0), DrawnGrid.SLANTED, plan);
    assertEquals(30, read.cells().size());
    assertColours(read, TOLERANCE);
  }

  @Test
  void aPhotoThatIsTurnedIsReadInTheOrderOfThePlan() {
    PhotoPlan plan = new PhotoPlan(4, 3, 8, 2);
    Corners turned =
        new Corners(
            DrawnGrid.SLANTED.topRight(),
            DrawnGrid.SLANTED.bottomRight(),
            DrawnGrid.SLANTED.bottomLeft(),
            DrawnGrid.SLANTED.topLeft());
    assertNull(turned.fault(DrawnGrid.WIDTH, DrawnGrid.HEIGHT, plan));
    assertColours(GridColours.of(DrawnGrid.of(turned, plan, 0), turned, plan), TOLERANCE);
  }

  @Test
  void withoutGapsTheFrameRoundTheCellsIsTheBareSurface() {
    PhotoPlan plan = new PhotoPlan(2, 2, 8, 0);
    assertColours(
        GridColours.of(DrawnGrid.of(DrawnGrid.SLANTED, plan, 0), DrawnGrid.SLANTED, plan),
        TOLERANCE);
  }

  @Test
  void withNothingBareInThePhotoThereIsColourButNoDistance() {
    PhotoPlan plan = new PhotoPlan(2, 2, 8, 0);
    Corners whole = new Corners(new Spot(0, 0), new Spot(1, 0), new Spot(1, 1), new Spot(0, 1));
    GridColours read = GridColours.of(DrawnGrid.of(whole, plan, 0), whole, plan);
    assertNull(read.bare());
    assertTrue(read.cells().stream().allMatch(c -> c.colour() != null && c.distance() == null));
  }

  /** Grain of +-12 of 255 averages out over a cell. */
  @Test
  void grainAveragesOut() {
    PhotoPlan plan = new PhotoPlan(5, 6, 8, 1.5);
    assertColours(
        GridColours.of(DrawnGrid.of(DrawnGrid.SLANTED, plan, 12), DrawnGrid.SLANTED, plan), 1);
  }

  /** Corners set four pixels off still read the insides of the cells. */
  @Test
  void cornersOffByALittleChangeNothing() {
    PhotoPlan plan = new PhotoPlan(5, 6, 8, 1.5);
    Corners off =
        new Corners(
            new Spot(0.22 + 4.0 / DrawnGrid.WIDTH, 0.18 - 4.0 / DrawnGrid.HEIGHT),
            new Spot(0.83 - 4.0 / DrawnGrid.WIDTH, 0.11 + 4.0 / DrawnGrid.HEIGHT),
            new Spot(0.91 + 4.0 / DrawnGrid.WIDTH, 0.86),
            new Spot(0.12, 0.74 - 4.0 / DrawnGrid.HEIGHT));
    assertColours(GridColours.of(DrawnGrid.of(DrawnGrid.SLANTED, plan, 0), off, plan), 1);
  }
}
