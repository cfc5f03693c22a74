package club.emberwell.web.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Tests of a work laid out over their dose. */
class DosePlotTest {
  private static final double NARROW = 216;
  private static final double WIDE = 400;
  private static final double STEP = 9;
  private static final double RADIUS = 4.5;

  private static List<DosePlot.Trial> trials(Random random, int n, double middle) {
    List<DosePlot.Trial> trials = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double dose = middle * Math.exp(random.nextGaussian() * 0.5);
      trials.add(new DosePlot.Trial(dose, "right", false, "/reports/" + i, "Right " + i));
    }
    return trials;
  }

  private static DosePlot plot(List<DosePlot.Effect> lanes, double[] window, Double start) {
    return DosePlot.of(
        new DosePlot.Input(
            new Caption("dose", "title", "description"),
            lanes,
            List.of(new DosePlot.Chance(1, 0.2, true), new DosePlot.Chance(2, 0.9, true)),
            window,
            start,
            "start",
            new DosePlot.Scale("energy", Double::toString)));
  }

  private static DosePlot random(int seed) {
    Random random = new Random(seed);
    return plot(
        List.of(
            new DosePlot.Effect("too much", trials(random, 9, 5)),
            new DosePlot.Effect("right", trials(random, 30, 2)),
            new DosePlot.Effect("too little", trials(random, 9, 1))),
        new double[] {0.5, 1, 4, 4},
        2.0);
  }

  @Test
  void noDotTouchesAnotherOnAPhoneNorAtADesk() {
    for (int seed = 0; seed < 50; seed++) {
      for (DosePlot.Lane lane : random(seed).lanes()) {
        List<DosePlot.Dot> dots = lane.dots();
        for (int i = 0; i < dots.size(); i++) {
          for (int j = i + 1; j < dots.size(); j++) {
            assertApart(
                dots.get(i), dots.get(j), NARROW, dots.get(i).narrow(), dots.get(j).narrow());
            assertApart(dots.get(i), dots.get(j), WIDE, dots.get(i).wide(), dots.get(j).wide());
          }
        }
      }
    }
  }

  private static void assertApart(
      DosePlot.Dot a, DosePlot.Dot b, double width, int levelA, int levelB) {
    double across = (a.x() - b.x()) * width / 100;
    double down = (levelA - levelB) * STEP;
    assertTrue(Math.hypot(across, down) >= 2 * RADIUS - 0.2, a + " touches " + b);
  }

  @Test
  void theDotsOfALaneNeverReachTheNext() {
    for (int seed = 0; seed < 50; seed++) {
      List<DosePlot.Lane> lanes = random(seed).lanes();
      for (int i = 1; i < lanes.size(); i++) {
        int tallest =
            lanes.get(i).dots().stream()
                .mapToInt(d -> Math.max(d.narrow(), d.wide()))
                .max()
                .orElse(0);
        double top = lanes.get(i).y() - tallest * STEP - RADIUS;
        assertTrue(top > lanes.get(i - 1).y() + RADIUS, "lane " + i + " of " + seed);
      }
    }
  }

  @Test
  void manyAtOneDoseStayWithinTheirLane() {
    List<DosePlot.Trial> same = new ArrayList<>();
    for (int i = 0; i < 40; i++) {
      same.add(new DosePlot.Trial(2, "right", false, "/reports/" + i, "Right"));
    }
    DosePlot plot =
        plot(
            List.of(new DosePlot.Effect("too much", List.of()), new DosePlot.Effect("right", same)),
            null,
            null);
    assertTrue(plot.lanes().get(1).dots().stream().allMatch(dot -> dot.narrow() < DosePlot.LEVELS));
    assertNull(plot.band());
    assertNull(plot.start());
  }

  @Test
  void theBandFadesOnlyWhereItsEdgeIsNotTold() {
    DosePlot.Band band = random(1).band();
    assertTrue(band.rise() > 0);
    assertEquals(0, band.fall());
    assertTrue(band.core() > 0);
  }

  @Test
  void theSameTestsAreAlwaysDrawnTheSame() {
    assertEquals(random(3), random(3));
  }
}
