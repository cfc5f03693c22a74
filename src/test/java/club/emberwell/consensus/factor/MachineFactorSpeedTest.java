package club.emberwell.consensus.factor;

import club.emberwell.consensus.MadeTrials;
import club.emberwell.consensus.range.Group;
import club.emberwell.laser.WavelengthBand;
import club.emberwell.report.InventedTrials;
import club.emberwell.search.query.Property;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What finding the factors of one kind of light anew costs once the index changed, printed and
 * never asserted: {@code mvn test -Pbenchmark -Dtest=MachineFactorSpeedTest}.
 */
@Tag("benchmark")
class MachineFactorSpeedTest {
  private static final int ROUNDS = 20;

  @Test
  void factorsOfTheInventedClubAndOfAHundredThousandTrials() throws IOException {
    time("invented club", InventedTrials.read().groups());
    time("100,000 trials on 600 machines", large());
  }

  private static List<Group> large() {
    SplittableRandom random = new SplittableRandom(5);
    MadeTrials made = new MadeTrials();
    for (int i = 0; i < 100_000; i++) {
      int machine = 1 + random.nextInt(600);
      int work = random.nextInt(200);
      made.by(1 + machine / 2)
          .on(machine)
          .at(WavelengthBand.values()[machine % 3])
          .with(Property.MATERIAL, "m" + work)
          .dose(Math.exp(work % 7 + 0.2 * Math.sin(machine) + 0.2 * random.nextGaussian()));
    }
    return made.groups();
  }

  private static void time(String what, List<Group> groups) {
    double[] millis = new double[ROUNDS];
    for (int round = 0; round < ROUNDS; round++) {
      long start = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
      MachineFactors.of(groups).onThisWork(1, groups.get(0));
      millis[round] = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - start) / 1e6;
    }
    double[] warm = Arrays.copyOfRange(millis, ROUNDS / 2, ROUNDS);
    Arrays.sort(warm);
    System.out.printf(
        "%s: first %.0f ms of processor, then median %.1f ms%n",
        what, millis[0], warm[warm.length / 2]);
  }
}
