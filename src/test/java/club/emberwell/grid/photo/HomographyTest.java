package club.emberwell.grid.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The map from four pairs of points, held against maps that are known in full. */
class HomographyTest {
  private static final List<Spot> SQUARE =
      List.of(new Spot(0, 0), new Spot(1, 0), new Spot(1, 1), new Spot(0, 1));

  private static void assertNear(Spot expected, Spot got, double tolerance) {
    assertEquals(expected.x(), got.x(), tolerance);
    assertEquals(expected.y(), got.y(), tolerance);
  }

  /** (x, y) to (2x + 4y, 3y - 6x) / (x + 2y + 1), worked out by hand. */
  @Test
  void aKnownMapIsFoundFromFourOfItsPoints() {
    List<Spot> seen =
        List.of(new Spot(0, 0), new Spot(1, -3), new Spot(1.5, -0.75), new Spot(4.0 / 3, 1));
    Homography found = Homography.between(SQUARE, seen);
    assertNear(new Spot(1.2, -0.6), found.map(new Spot(0.5, 0.5)), 1e-12);
    assertNear(new Spot(1.5 / 1.75, -4.5 / 1.75), found.map(new Spot(0.75, 0)), 1e-12);
  }

  @Test
  void movingTurningAndScalingIsExact() {
    List<Spot> seen =
        List.of(new Spot(700, 100), new Spot(700, 500), new Spot(300, 500), new Spot(300, 100));
    Homography found = Homography.between(SQUARE, seen);
    assertNear(new Spot(600, 300), found.map(new Spot(0.5, 0.25)), 1e-9);
  }

  @Test
  void randomMapsAreFoundAndTheWayBackLeadsBack() {
    Random random = new Random(9);
    for (int round = 0; round < 200; round++) {
      double[] h = new double[9];
      for (int i = 0; i < 8; i++) {
        h[i] = random.nextDouble() - 0.5;
      }
      // no place of the plan lies behind the camera
      h[0] += 2;
      h[4] += 2;
      h[6] *= 0.4;
      h[7] *= 0.4;
      h[8] = 1;
      Homography known = new Homography(h);
      List<Spot> from =
          List.of(new Spot(0, 0), new Spot(1.1, 0), new Spot(1.1, 0.9), new Spot(0, 0.9));
      Homography found = Homography.between(from, from.stream().map(known::map).toList());
      Homography back = found.inverse();
      for (int i = 0; i < 10; i++) {
        Spot place = new Spot(random.nextDouble(), random.nextDouble());
        assertNear(known.map(place), found.map(place), 1e-9);
        assertNear(place, back.map(known.map(place)), 1e-9);
      }
    }
  }
}
