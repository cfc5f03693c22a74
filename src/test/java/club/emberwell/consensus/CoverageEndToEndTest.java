package club.emberwell.consensus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.range.Spread;
import club.emberwell.stats.Interval;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What the intervals of a range claim, from single trials on: made clubs of members who differ by
 * exp(0.4), whose own trials differ by exp(0.15), most with 1 to 4 reports and one in six with 60.
 * The seed is fixed; the standard error of a share of 2,000 runs is at most 0.011.
 */
class CoverageEndToEndTest {
  private static final int RUNS = 2_000;
  private static final double BETWEEN = 0.4;
  private static final double WITHIN = 0.15;
  private final SplittableRandom random = new SplittableRandom(20261125);

  /** Shares of runs in which the truth lay inside, and what the band claimed on average. */
  private record Covered(double middle, double next, double claimed) {}

  private void post(MadeTrials made, long member, double typos) {
    double own = BETWEEN * random.nextGaussian();
    int reports = member % 6 == 0 ? 60 : 1 + random.nextInt(4);
    for (int i = 0; i < reports; i++) {
      double slip = random.nextDouble() < typos ? Math.log(10) : 0;
      made.by(member).dose(Math.exp(own + WITHIN * random.nextGaussian() + slip));
    }
  }

  private Covered simulate(int members, double typos) {
    int middle = 0;
    int next = 0;
    double claimed = 0;
    for (int run = 0; run < RUNS; run++) {
      MadeTrials made = new MadeTrials();
      for (int member = 1; member <= members; member++) {
        post(made, member, typos);
      }
      Spread dose = made.range().dose();
      middle += dose.medianInterval().filter(i -> i.contains(1)).isPresent() ? 1 : 0;
      Interval band = dose.nextMember().orElseThrow();
      claimed += band.coverage();
      MadeTrials other = new MadeTrials();
      post(other, 1, 0);
      next += band.contains(other.range().dose().voices().values()[0]) ? 1 : 0;
    }
    return new Covered((double) middle / RUNS, (double) next / RUNS, claimed / RUNS);
  }

  @ParameterizedTest
  @ValueSource(ints = {6, 9, 12, 20})
  void theMiddleAndTheNextMemberLieInsideAsOftenAsIsSaid(int members) {
    Covered found = simulate(members, 0);
    assertTrue(found.middle() >= 0.94, members + ": " + found);
    // setting aside from 8 voices on takes a little from the ends
    assertEquals(found.claimed(), found.next(), 0.05, members + ": " + found);
  }

  /** With 3 % tenfold typos a nominal 80 % band holds 72-85 %, as in this project's simulation. */
  @ParameterizedTest
  @ValueSource(ints = {6, 9, 12, 20})
  void typosTakeLittleFromThat(int members) {
    Covered found = simulate(members, 0.03);
    assertTrue(found.middle() >= 0.93, members + ": " + found);
    assertEquals(found.claimed(), found.next(), 0.08, members + ": " + found);
  }
}
