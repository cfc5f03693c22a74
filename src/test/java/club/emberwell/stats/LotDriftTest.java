package club.emberwell.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.stats.LotDrift.Change;
import club.emberwell.stats.LotDrift.Flag;
import club.emberwell.stats.LotDrift.Lot;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Drift over lots: closed forms by R's t.test and lm, what is claimed by invented suppliers. */
class LotDriftTest {
  private static final int SUPPLIERS = 2_000;

  /** One standard error of a share found among that many suppliers. */
  private static final double SLACK = 0.005;

  private static List<Lot> lots(double... logs) {
    return DoubleStream.of(logs).mapToObj(log -> new Lot(0, log)).toList();
  }

  @Test
  void lotsSinceAPlaceStandToThoseBeforeAsInStudentsTest() {
    // R 4.3: t.test(extra ~ group, data = sleep, var.equal = TRUE): -3.363874 to 0.203874, -1.58
    Change change =
        LotDrift.since(
                lots(
                    1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4, 0.7, -1.6, -0.2, -1.2, -0.1,
                    3.4, 3.7, 0.8, 0.0, 2.0),
                10)
            .orElseThrow();
    assertEquals(-1.58, Math.log(change.ratio()), 1e-12);
    assertEquals(-3.363874, Math.log(change.interval().low()), 5e-7);
    assertEquals(0.203874, Math.log(change.interval().high()), 5e-7);
  }

  @Test
  void cellsAreComparedWithThemselvesOnly() {
    // two members on levels far apart, both with 0.2 more since: by hand, without any rest
    List<Lot> lots = List.of(new Lot(0, 1), new Lot(1, 5), new Lot(0, 1.2), new Lot(1, 5.2));
    List<Lot> more = new ArrayList<>(lots);
    more.add(new Lot(0, 1.2));
    assertEquals(0.2, Math.log(LotDrift.since(more, 2).orElseThrow().ratio()), 1e-12);
    assertTrue(LotDrift.newest(List.of(new Lot(0, 1), new Lot(1, 1))).isEmpty());
    assertTrue(LotDrift.flags(more).isEmpty(), "five lots of two members are too few");
  }

  @Test
  void theNewestLotIsForetoldFromEarlierOnes() {
    // by hand: mean 0, sd 1, t(0.975; 2) = 4.302653, times sqrt(1 + 1/3)
    Change change = LotDrift.newest(lots(-1, 0, 1, 2)).orElseThrow();
    assertEquals(3, change.lots());
    assertEquals(2, Math.log(change.ratio()), 1e-12);
    assertEquals(2 - 4.302653 * Math.sqrt(4.0 / 3), Math.log(change.interval().low()), 1e-6);
    assertTrue(LotDrift.newest(lots(1, 2, 3)).isEmpty(), "two earlier lots say nothing of spread");
    assertTrue(LotDrift.newest(lots()).isEmpty());
  }

  @Test
  void aStepIsFlaggedWithTheLotItBeganAndTheCheckBeginsAnew() {
    double[] logs = {0, .01, -.01, .01, 0, -.01, .2, .21, .19, .2, .21, .2, .19, .2};
    List<Flag> flags = LotDrift.flags(lots(logs));
    assertEquals(1, flags.size(), flags.toString());
    assertEquals(6, flags.get(0).since());
    assertEquals(7, flags.get(0).at(), "two lots are needed");
    assertEquals(1.22, flags.get(0).ratio(), 0.01);
    assertTrue(LotDrift.flags(lots(0, 0, 0, 0, 0, 0, 0)).isEmpty());
  }

  /**
   * "Of 100 suppliers that never change, at most about 6 are flagged within 20 lots."
   *
   * @param lots how lots differ, sd of ln dose
   * @param noise how well one report of a lot is judged
   */
  @ParameterizedTest(name = "{0} members, lots {1}, judged {2}")
  @CsvSource({
    "1, 0.05, 0.1",
    "1, 0.1, 0.05",
    "1, 0.2, 0.2",
    "3, 0.05, 0.1",
    "5, 0.1, 0.1",
    "8, 0.05, 0.2"
  })
  void suppliersThatNeverChangeAreSeldomFlagged(int members, double lots, double noise) {
    Invented invented = new Invented(members, lots, noise, 0);
    int flagged = 0;
    for (int i = 0; i < SUPPLIERS; i++) {
      flagged +=
          LotDrift.flags(invented.series(LotDrift.WITHIN, LotDrift.WITHIN, 0)).isEmpty() ? 0 : 1;
    }
    double share = (double) flagged / SUPPLIERS;
    assertTrue(share <= LotDrift.FALSE_ALARMS + SLACK, "flagged " + share);
  }

  /** A tenth-fold slip in 3 of 100 lots flags no more than half as many suppliers again. */
  @Test
  void slipsFlagFew() {
    Invented invented = new Invented(1, 0.05, 0.1, 0.03);
    int flagged = 0;
    for (int i = 0; i < SUPPLIERS; i++) {
      flagged +=
          LotDrift.flags(invented.series(LotDrift.WITHIN, LotDrift.WITHIN, 0)).isEmpty() ? 0 : 1;
    }
    double share = (double) flagged / SUPPLIERS;
    assertTrue(share <= 2 * LotDrift.FALSE_ALARMS, "flagged " + share);
  }

  /**
   * How soon a change of 20 % is noticed.
   *
   * @param before lots before it
   * @param soon share noticed within 5 lots, at least
   * @param later and within 10
   */
  @ParameterizedTest(name = "{0} members, lots {1}, judged {2}, after {3}")
  @CsvSource({
    "1, 0.03, 0.05, 5, 0.6, 0.9",
    "1, 0.03, 0.05, 10, 0.85, 0.97",
    "1, 0.05, 0.1, 5, 0.15, 0.45",
    "1, 0.05, 0.1, 10, 0.4, 0.75",
    "5, 0.05, 0.1, 20, 0.45, 0.8"
  })
  void aChangeOfAFifthIsNoticed(
      int members, double lots, double noise, int before, double soon, double later) {
    Invented invented = new Invented(members, lots, noise, 0);
    int five = 0;
    int ten = 0;
    int all = 0;
    for (int i = 0; i < SUPPLIERS; i++) {
      List<Flag> flags = LotDrift.flags(invented.series(before + 10, before, Math.log(1.2)));
      if (flags.isEmpty() || flags.get(0).at() >= before) {
        all++;
        five += !flags.isEmpty() && flags.get(0).at() < before + 5 ? 1 : 0;
        ten += flags.isEmpty() ? 0 : 1;
      }
    }
    assertTrue((double) five / all >= soon, "within 5: " + (double) five / all);
    assertTrue((double) ten / all >= later, "within 10: " + (double) ten / all);
  }

  /** The interval of the newest lot holds what that lot really needs. */
  @Test
  void theIntervalOfTheNewestLotHoldsTheTruth() {
    Invented invented = new Invented(1, 0.08, 0.1, 0);
    int held = 0;
    for (int i = 0; i < SUPPLIERS; i++) {
      double truth = 0.1;
      List<Lot> lots = invented.series(6, 5, truth);
      held += LotDrift.newest(lots).orElseThrow().interval().contains(Math.exp(truth)) ? 1 : 0;
    }
    double share = (double) held / SUPPLIERS;
    assertEquals(0.95, share, 0.02);
  }

  /** Lots of members who judge on levels of their own. */
  private static final class Invented {
    private final SplittableRandom random = new SplittableRandom(1310);
    private final int members;
    private final double lots;
    private final double noise;
    private final double slips;

    Invented(int members, double lots, double noise, double slips) {
      this.members = members;
      this.lots = lots;
      this.noise = noise;
      this.slips = slips;
    }

    /** Lots of a supplier; one to three reports each. */
    List<Lot> series(int n, int changed, double by) {
      double[] levels =
          DoubleStream.generate(() -> 0.4 * random.nextGaussian()).limit(members).toArray();
      List<Lot> series = new ArrayList<>();
      for (int i = 0; i < n; i++) {
        int member = random.nextInt(members);
        int reports = 1 + random.nextInt(3);
        double log = levels[member] + lots * random.nextGaussian() + (i >= changed ? by : 0);
        log += noise * random.nextGaussian() / Math.sqrt(reports);
        if (random.nextDouble() < slips) {
          log += random.nextBoolean() ? Math.log(10) : -Math.log(10);
        }
        series.add(new Lot(member, log));
      }
      return series;
    }
  }
}
