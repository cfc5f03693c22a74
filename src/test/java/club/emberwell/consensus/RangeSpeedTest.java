package club.emberwell.consensus;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.consensus.answer.Reader;
import club.emberwell.consensus.range.Group;
import club.emberwell.laser.Effect;
import club.emberwell.laser.Emission;
import club.emberwell.laser.Laser;
import club.emberwell.laser.LaserSource;
import club.emberwell.laser.Motion;
import club.emberwell.laser.Regime;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Measure;
import club.emberwell.search.query.Property;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Figures for ranges, printed and never asserted: {@code mvn test -Pbenchmark
 * -Dtest=RangeSpeedTest}. The columns are at hand; what reading them costs, the search measures.
 */
@Tag("benchmark")
class RangeSpeedTest {
  private static final int ROUNDS = 40;
  private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

  @Test
  void rangesOfSeveralSizes() {
    System.out.printf(
        "%s, Java %s, %d processors%n",
        System.getProperty("os.arch"),
        Runtime.version(),
        Runtime.getRuntime().availableProcessors());
    for (int trials : new int[] {500, 10_000, 100_000}) {
      TrialColumns columns = columns(trials, trials / 20);
      time("core, " + trials + " trials", () -> ConsensusService.ranges(columns, false));
      RangeWork work =
          new RangeWork(
              CatalogFiles.catalog().cautions(),
              new Reader(
                  1,
                  1,
                  new Laser(
                      LaserSource.CO2,
                      10_600,
                      60,
                      Motion.GANTRY,
                      Emission.of(Regime.CW),
                      null,
                      150.0,
                      600.0)),
              null);
      Group group = Group.split(columns).get(0);
      time(
          "in full, " + trials + " trials",
          () -> work.forReader(work.full(group, Map.of()), group, Optional.empty()));
    }
  }

  private static void time(String what, Runnable work) {
    double[] millis = new double[ROUNDS];
    for (int round = 0; round < ROUNDS; round++) {
      long start = THREADS.getCurrentThreadCpuTime();
      work.run();
      millis[round] = (THREADS.getCurrentThreadCpuTime() - start) / 1e6;
    }
    double[] warm = Arrays.copyOfRange(millis, ROUNDS / 2, ROUNDS);
    Arrays.sort(warm);
    System.out.printf(
        "%s: median %.2f ms of processor, worst %.2f ms%n",
        what, warm[warm.length / 2], warm[warm.length - 1]);
  }

  /** All of one key, in no order, every setting stated, six lenses. */
  private static TrialColumns columns(int trials, int members) {
    SplittableRandom random = new SplittableRandom(11);
    MadeTrials made = new MadeTrials();
    for (int i = 0; i < trials; i++) {
      int member = random.nextInt(members);
      double dose = Math.exp(0.3 * random.nextGaussian() + 0.3 * Math.sin(member));
      double log = Math.log(dose) + 0.15 * random.nextGaussian();
      Effect effect = log > 0.5 ? Effect.TOO_MUCH : log < -0.5 ? Effect.TOO_LITTLE : Effect.RIGHT;
      MadeTrials.Trial trial =
          made.by(member)
              .on(1 + member)
              .dose(dose)
              .was(effect)
              .with(Property.LENS, random.nextInt(6) + " mm")
              .with(Property.AIR_ASSIST, random.nextBoolean() ? "on" : "off");
      for (Measure measure : Measure.SETTINGS) {
        trial.with(measure, Math.exp(random.nextGaussian()));
      }
      trial.with(Measure.RATED_POWER, 40).with(Measure.BEAM_DIAMETER, 150);
    }
    return made.columns();
  }
}
