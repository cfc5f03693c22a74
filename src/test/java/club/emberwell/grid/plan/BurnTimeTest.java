package club.emberwell.grid.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.grid.reading.Timing;
import club.emberwell.laser.Amount;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.quantity.QuantityKind;
import java.util.List;
import org.junit.jupiter.api.Test;

class BurnTimeTest {
  private static final Kinematics NOTHING_LOST =
      new Kinematics(Double.POSITIVE_INFINITY, 0.0, Double.POSITIVE_INFINITY, 0, true);

  private static Laser laser(Motion motion, Double fastest) {
    return new Laser(
        LaserSource.DIODE, 455, 10, motion, Emission.of(Regime.CW), null, null, fastest);
  }

  private static Settings settings(double speed, double spacing) {
    return Settings.NONE
        .with(Setting.POWER, new Amount(QuantityKind.POWER_PERCENT, 50))
        .with(Setting.SPEED, speed)
        .with(Setting.LINE_SPACING, spacing);
  }

  private static double seconds(Process process, Settings settings, double side, Kinematics m) {
    return new BurnTime.Work(process, settings, side).seconds(m);
  }

  /** physics.md 2.19: 100 x 100 mm, 400 mm/s, 0.1 mm: 250 s. */
  @Test
  void withNothingLostAFillTakesItsAreaOverSpeedAndSpacing() {
    assertEquals(
        250, seconds(Process.SURFACE_ENGRAVING, settings(400, 0.1), 100, NOTHING_LOST), 1e-9);
  }

  /** 10 mm at 50 mm/s with 1000 mm/s²: 0.2 s on the way and 0.05 s for both ends. */
  @Test
  void aMoveThatReachesItsSpeedIsATrapezium() {
    Kinematics m = new Kinematics(1000, 0.0, 100, 0, true);
    assertEquals(10 / 50.0 + 50 / 1000.0, m.move(10, 50), 1e-12);
  }

  /** 4 mm at 100 mm/s with 1000 mm/s² needs 10 mm to get up and down: 2 sqrt(4 / 1000) s. */
  @Test
  void aMoveTooShortForItsSpeedIsATriangle() {
    Kinematics m = new Kinematics(1000, 0.0, 100, 0, true);
    assertEquals(2 * Math.sqrt(0.004), m.move(4, 100), 1e-12);
    assertEquals(m.move(10, 100), 0.2, 1e-12);
    assertEquals(0, m.move(0, 100), 0);
  }

  /**
   * By hand: 8 mm cell, 0.1 mm, so 80 lines; 100 mm/s, 1000 mm/s², 5 mm overscan: 18 mm a line,
   * 0.18 + 0.1 s; the step of 0.1 mm 2 sqrt(0.0001) = 0.02 s: 80 x 0.3 = 24 s.
   */
  @Test
  void aFilledCellByHand() {
    Kinematics m = new Kinematics(1000, 5.0, 100, 0, true);
    assertEquals(24, seconds(Process.COATING_REMOVAL, settings(100, 0.1), 8, m), 1e-9);
    Settings twice = settings(100, 0.1).with(Setting.PASSES, 2);
    assertEquals(48, seconds(Process.COATING_REMOVAL, twice, 8, m), 1e-9);
    Settings crossed = twice.with(Setting.CROSS_PASS, true);
    assertEquals(96, seconds(Process.COATING_REMOVAL, crossed, 8, m), 1e-9);
  }

  /** The same one-way: each line runs its 18 mm back at 100 mm/s, another 0.28 s. */
  @Test
  void oneWayLinesRunBackFirst() {
    Kinematics m = new Kinematics(1000, 5.0, 100, 0, true);
    Settings oneWay = settings(100, 0.1).with(Setting.DIRECTION, "one-way");
    assertEquals(24 + 80 * 0.28, seconds(Process.COATING_REMOVAL, oneWay, 8, m), 1e-9);
  }

  /** Without an overscan given it is the way to the speed: 5 mm at either end here. */
  @Test
  void theOverscanIsWhatItTakesToReachTheSpeed() {
    Kinematics own = new Kinematics(1000, null, 100, 0, false);
    assertEquals(5, own.beside(100), 1e-12);
    assertEquals(24, seconds(Process.COATING_REMOVAL, settings(100, 0.1), 8, own), 1e-9);
  }

  /** Four sides of 10 mm at 20 mm/s with 1000 mm/s²: 4 x (0.5 + 0.02) s. */
  @Test
  void aCutIsTheOutlineOfItsCell() {
    Kinematics m = new Kinematics(1000, null, 100, 0, false);
    assertEquals(2.08, seconds(Process.CUT, settings(20, 0.1), 10, m), 1e-9);
  }

  @Test
  void mirrorsLoseNoTimeByAccelerationButWait() {
    Kinematics galvo = Kinematics.of(laser(Motion.GALVO, 5000.0), new Timing(null, null));
    assertEquals(5000, galvo.jump());
    // 80 lines of 8 mm at 1000 mm/s, each with a jump of 0.1 mm and its wait
    double line = 8 / 1000.0 + 0.1 / 5000 + galvo.settle();
    assertEquals(80 * line, seconds(Process.COATING_REMOVAL, settings(1000, 0.1), 8, galvo), 1e-9);
  }

  @Test
  void whatTheMemberSaysCountsMoreThanWhatIsUsual() {
    Kinematics said = Kinematics.of(laser(Motion.GANTRY, null), new Timing(4000.0, 3.0));
    assertEquals(new Kinematics(4000, 3.0, 100, 0, true), said);
  }

  @Test
  void theWayFromCellToCellCounts() {
    Layout layout = new Layout(8, 2, 0, 0, new Layout.Parts(2, 1, 1), null);
    Kinematics m = new Kinematics(1000, 5.0, 100, 0, true);
    GridPlan.Cell cell = new GridPlan.Cell(0, 0, settings(100, 0.1), 1.0, null, null);
    GridPlan.Cell out =
        new GridPlan.Cell(0, 1, settings(100, 0.1), 1.0, null, new GridPlan.LeftOut("x", "y"));
    BurnTime time =
        BurnTime.of(
            List.of(cell, cell, out),
            laser(Motion.GANTRY, null),
            Process.COATING_REMOVAL,
            layout,
            m);
    assertEquals(2 * (24 + 0.2), time.seconds(), 1e-9);
    assertEquals(2 * 80 * 0.08, time.beam(), 1e-9);
  }
}
