package club.emberwell.grid.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.grid.plan.GridPlan.Cell;
import club.emberwell.grid.reading.Axis;
import club.emberwell.grid.reading.GridLimits;
import club.emberwell.grid.reading.GridReading;
import club.emberwell.grid.reading.Piece;
import club.emberwell.grid.reading.Timing;
import club.emberwell.grid.reading.Wish;
import club.emberwell.laser.Amount;
import club.emberwell.laser.DoseKind;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Process;
import club.emberwell.laser.Regime;
import club.emberwell.laser.Setting;
import club.emberwell.laser.Settings;
import club.emberwell.laser.dose.Dose;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.QuantityPrinter;
import club.emberwell.quantity.RoundNumber;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.remark.EntryRefused;
import club.emberwell.report.reading.Work;
import club.emberwell.stats.Interval;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PlanningTest {
  private static final int INPUTS = 4000;
  private static final Piece PIECE = new Piece(8, 2, null, null, null, false);
  private static final Timing TIMING = new Timing(null, null);

  /** One thing somebody may ask for. */
  private record Asked(Laser laser, Process process, Settings base, Wish wish, Interval doses) {
    GridPlan plan() {
      return plan(UnitPreferences.metric());
    }

    GridPlan plan(UnitPreferences reader) {
      GridReading read =
          new GridReading(
              null,
              laser,
              Work.of(process),
              base,
              wish,
              PIECE,
              TIMING,
              new GridReading.Noticed(Optional.empty(), List.of()));
      Known known =
          new Known(Cover.Basis.RANGE, Optional.of(doses), Optional.empty(), 1, Optional.empty());
      return Planning.of(read, base, known, reader);
    }
  }

  private static Laser laser(Motion motion, double watts, Double fastest) {
    boolean galvo = motion == Motion.GALVO;
    return new Laser(
        galvo ? LaserSource.FIBRE : LaserSource.DIODE,
        galvo ? 1064 : 455,
        watts,
        motion,
        Emission.of(galvo ? Regime.NS : Regime.CW),
        null,
        galvo ? 30.0 : 80.0,
        fastest);
  }

  private static double between(Random random, double low, double high) {
    return low * Math.pow(high / low, random.nextDouble());
  }

  private static Asked any(Random random, Wish sides) {
    Motion motion = random.nextBoolean() ? Motion.GALVO : Motion.GANTRY;
    double watts = between(random, 2, 100);
    Double fastest = random.nextBoolean() ? null : between(random, 100, 8000);
    Process process = Process.values()[random.nextInt(Process.values().length)];
    Laser laser = laser(motion, watts, fastest);
    double speed = between(random, 5, 1500);
    Settings base =
        Settings.NONE
            .with(Setting.POWER, new Amount(QuantityKind.POWER_PERCENT, 10 + random.nextInt(90)))
            .with(Setting.SPEED, fastest == null ? speed : Math.min(speed, fastest))
            .with(Setting.LINE_SPACING, between(random, 0.02, 0.3));
    if (motion == Motion.GALVO) {
      base = base.with(Setting.REPETITION_RATE, between(random, 20, 200));
    }
    double dose = Dose.derive(laser, process, base).dose(process.doseKind());
    double half = Math.sqrt(between(random, 1.5, 40));
    double off = between(random, 0.5, 2);
    return new Asked(
        laser,
        process,
        base,
        new Wish(
            sides.across(),
            sides.down(),
            between(random, 1.05, 2),
            random.nextBoolean() ? GridLimits.CELLS : 2 + random.nextInt(60)),
        new Interval(off * dose / half, off * dose * half, 0.8));
  }

  private static final Wish USUAL = new Wish(null, null, 1.2, GridLimits.CELLS);

  private static Stream<Asked> inputs(Wish sides) {
    Random random = new Random(9);
    return IntStream.range(0, INPUTS).mapToObj(i -> any(random, sides));
  }

  private static void rising(Axis axis) {
    for (int i = 1; i < axis.size(); i++) {
      assertTrue(axis.number(i) > axis.number(i - 1), axis.toString());
    }
  }

  @Test
  void neverMoreTestsThanAskedNorASideTooLong() {
    inputs(USUAL)
        .forEach(
            asked -> {
              GridPlan plan = asked.plan();
              assertTrue(plan.cells().size() <= asked.wish().most(), asked.toString());
              assertTrue(plan.cells().size() >= 2, asked.toString());
              assertTrue(plan.rows() <= GridLimits.SIDE && plan.columns() <= GridLimits.SIDE);
            });
  }

  @Test
  void bothSidesRiseAndStayWithinTheMachine() {
    inputs(USUAL)
        .forEach(
            asked -> {
              GridPlan plan = asked.plan();
              rising(plan.axes().across());
              rising(plan.axes().down());
              for (Cell cell : plan.cells()) {
                assertTrue(
                    cell.settings().powerPercent() == null
                        || cell.settings().powerPercent() <= 100);
                Double top = asked.laser().maxSpeedMmS();
                assertTrue(top == null || cell.settings().speedMmS() <= top, asked.toString());
              }
            });
  }

  /** Where the machine reaches both ends; else the plan says that it does not. */
  @Test
  void theDosesAskedForAreCoveredOrItIsSaid() {
    long whole =
        inputs(USUAL)
            .filter(
                asked -> {
                  Cover cover = asked.plan().cover();
                  assertNotNull(cover.low(), asked.toString());
                  boolean covered =
                      cover.low() <= asked.doses().low() * 1.01
                          && cover.high() * 1.01 >= asked.doses().high();
                  assertEquals(covered, cover.whole(), asked + " " + cover);
                  return covered;
                })
            .count();
    assertTrue(whole > INPUTS * 0.7, whole + " of " + INPUTS);
  }

  @Test
  void dosesGoInEqualRatiosButForRounding() {
    inputs(USUAL)
        .filter(asked -> asked.wish().most() == GridLimits.CELLS)
        .map(Asked::plan)
        .filter(plan -> plan.axes().across().setting() == Setting.POWER)
        .filter(plan -> plan.cover().whole() && plan.axes().down().size() > 1)
        .filter(PlanningTest::freeOfLimits)
        .forEach(
            plan -> {
              double[] logs =
                  plan.cells().stream().mapToDouble(c -> Math.log(c.dose())).sorted().toArray();
              double mean = (logs[logs.length - 1] - logs[0]) / (logs.length - 1);
              for (int i = 1; i < logs.length; i++) {
                double step = logs[i] - logs[i - 1];
                assertTrue(step > 0.3 * mean && step < 1.7 * mean, step + " of " + mean + plan);
              }
            });
  }

  private static boolean freeOfLimits(GridPlan plan) {
    Axis power = plan.axes().across();
    return power.number(0) > 5.5 && power.number(power.size() - 1) < 99;
  }

  @Test
  void theStepsAreAtMostThoseWantedWhereTheTestsMayBeAsManyAsItTakes() {
    inputs(USUAL)
        .filter(asked -> asked.wish().most() == GridLimits.CELLS)
        .forEach(
            asked -> {
              GridPlan plan = asked.plan();
              if (plan.axes().across().setting() == Setting.POWER
                  && freeOfLimits(plan)
                  && plan.cover().whole()) {
                double wanted = asked.wish().resolution();
                assertTrue(
                    plan.cover().step() < 1 + (wanted - 1) * 1.7, asked + " " + plan.cover());
              }
            });
  }

  @Test
  void whateverIsChosenForTheSidesThePlanKeepsItsLimits() {
    List<Setting> choices =
        List.of(
            Setting.POWER,
            Setting.SPEED,
            Setting.LINE_SPACING,
            Setting.PASSES,
            Setting.FOCUS_OFFSET,
            Setting.REPETITION_RATE);
    Set<String> planned = new TreeSet<>();
    for (Setting across : choices) {
      for (Setting down : choices) {
        if (across != down) {
          Wish sides = new Wish(new Axis(across, List.of()), new Axis(down, List.of()), 1.2, 400);
          inputs(sides)
              .limit(60)
              .filter(asked -> asked.process().doseKind() == DoseKind.AREAL)
              .forEach(
                  asked -> {
                    try {
                      GridPlan plan = asked.plan();
                      rising(plan.axes().across());
                      rising(plan.axes().down());
                      assertEquals(across, plan.axes().across().setting());
                      assertEquals(down, plan.axes().down().setting());
                      assertTrue(plan.cells().size() <= asked.wish().most(), asked.toString());
                      planned.add(across + " " + down);
                    } catch (EntryRefused e) {
                      // a frequency nobody knows must be given by hand
                      assertTrue(
                          e.remarks().get(0).field().startsWith("/axes"), e.remarks().toString());
                    }
                  });
        }
      }
    }
    assertEquals(choices.size() * (choices.size() - 1), planned.size());
  }

  @Test
  void oneSideGivenByHandIsKeptAndTheOtherCoversWhatItLeaves() {
    List<Object> powers =
        List.of(
            new Amount(QuantityKind.POWER_PERCENT, 40),
            new Amount(QuantityKind.POWER_PERCENT, 60),
            new Amount(QuantityKind.POWER_PERCENT, 80));
    Wish sides = new Wish(new Axis(Setting.POWER, powers), null, 1.2, 400);
    long whole =
        inputs(sides)
            .filter(
                asked -> {
                  GridPlan plan = asked.plan();
                  assertEquals(powers, plan.axes().across().values());
                  rising(plan.axes().down());
                  return plan.cover().whole();
                })
            .count();
    assertTrue(whole > INPUTS * 0.5, whole + " of " + INPUTS);
  }

  /** What is planned in in/s has at most three figures there, and its doses are of those speeds. */
  @Test
  void speedsHaveFewFiguresInTheUnitOfWhoeverPlans() {
    UnitPreferences inches = UnitPreferences.metric().with(QuantityKind.SPEED, "[in_i]/s");
    Asked asked =
        new Asked(
            laser(Motion.GANTRY, 10, 500.0),
            Process.SURFACE_ENGRAVING,
            Settings.NONE
                .with(Setting.POWER, new Amount(QuantityKind.POWER_PERCENT, 60))
                .with(Setting.LINE_SPACING, 0.1),
            USUAL,
            new Interval(0.6, 2.4, 0.8));
    GridPlan plan = asked.plan(inches);
    Axis speeds = plan.axes().down();
    assertEquals(Setting.SPEED, speeds.setting());
    for (int i = 0; i < speeds.size(); i++) {
      double shown = QuantityPrinter.value(speeds.number(i), QuantityKind.SPEED, inches);
      assertEquals(RoundNumber.significant(shown, 3), shown, 1e-9);
      assertTrue(speeds.number(i) <= 500);
    }
    for (Cell cell : plan.cells()) {
      double watts = cell.settings().powerPercent() / 10;
      assertEquals(watts / (cell.settings().speedMmS() * 0.1), cell.dose(), 1e-9);
    }
    assertTrue(plan.cover().whole());
  }

  @Test
  void whereNothingIsKnownTheValuesMustBeGiven() {
    Laser laser = laser(Motion.GANTRY, 10, null);
    AxesPlanner planner =
        new AxesPlanner(
            laser, Process.COATING_REMOVAL, Settings.NONE, USUAL, UnitPreferences.metric());
    EntryRefused refused = assertThrows(EntryRefused.class, () -> planner.over(Optional.empty()));
    assertEquals("/axes", refused.remarks().get(0).field());
  }

  @Test
  void aSpanOfFourAndAHalfTakesFifteenTestsInStepsOfFifteenPercent() {
    assertEquals(new Shape(4, 3, Math.pow(4.5, 1 / 11.0)), Shape.of(4.5, 1.15, 400));
    assertEquals(10, Shape.of(4.5, 1.2, 400).cells());
    assertEquals(6, Shape.of(4.5, 1.15, 6).cells());
  }

  @Test
  void passesDoubleAndTheOtherSideFillsOneDoubling() {
    Shape shape = Shape.doubling(8, 1.2, 400);
    assertEquals(4, shape.fine());
    assertEquals(Math.pow(2, 0.25), shape.step(), 1e-12);
    assertEquals(4, shape.coarse());
  }
}
