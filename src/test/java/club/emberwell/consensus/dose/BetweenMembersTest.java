package club.emberwell.consensus.dose;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.MadeTrials;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.Effect;
import club.emberwell.stats.RandomEffects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Members compared. The estimators are checked against R's metafor in {@code stats}. */
class BetweenMembersTest {

  private static BetweenMembers between(MadeTrials made) {
    Group group = made.group();
    return BetweenMembers.of(group, Range.of(group, false).dose());
  }

  @Test
  void theEstimateIsThatOfTheMembersMeansWithThePooledVarianceWithin() {
    double[][] logs = {{0, 0.2}, {0.5, 0.3, 0.4}, {-0.4, -0.2}, {0.1}};
    MadeTrials made = new MadeTrials();
    for (int machine = 0; machine < logs.length; machine++) {
      for (double log : logs[machine]) {
        made.by(machine + 1L).on(machine + 1L).dose(Math.exp(log));
      }
    }
    made.by(1).on(1).dose(9).was(Effect.TOO_MUCH);
    BetweenMembers found = between(made);
    // within: (0.02 + 0.02 + 0.02) / 4 repeats
    double within = 0.06 / 4;
    RandomEffects expected =
        RandomEffects.of(
                new double[] {0.1, 0.4, -0.3, 0.1},
                new double[] {within / 2, within / 3, within / 2, within})
            .orElseThrow();
    BetweenMembers.Estimate estimate = found.estimate().orElseThrow();
    assertEquals(4, found.members());
    assertEquals(4, found.repeats());
    assertEquals(expected.factor(), estimate.factor(), 1e-9);
    assertEquals(Math.exp(Math.sqrt(within)), estimate.within(), 1e-9);
  }

  /** A made world: members differ by exp(0.3), repeats by exp(0.1). */
  @Test
  void aKnownFactorIsFoundAgain() {
    SplittableRandom random = new SplittableRandom(3);
    MadeTrials made = new MadeTrials();
    for (int machine = 1; machine <= 80; machine++) {
      double own = 0.3 * random.nextGaussian();
      for (int trial = 0; trial < 4; trial++) {
        made.by(machine).on(machine).dose(Math.exp(own + 0.1 * random.nextGaussian()));
      }
    }
    BetweenMembers.Estimate estimate = between(made).estimate().orElseThrow();
    assertEquals(Math.exp(0.3), estimate.factor(), 0.12);
    assertEquals(Math.exp(0.1), estimate.within(), 0.02);
  }

  /** The unit is the member: what one member's machines differ by is within that member. */
  @Test
  void threeMachinesOfOneMemberAreOneMember() {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= 3; member++) {
      for (int machine = 1; machine <= 3; machine++) {
        made.by(member).on(10L * member + machine).dose(machine);
      }
    }
    BetweenMembers found = between(made);
    assertEquals(3, found.members());
    assertEquals(6, found.repeats());
    BetweenMembers.Estimate estimate = found.estimate().orElseThrow();
    assertFalse(estimate.differ());
    assertEquals(1, estimate.factor());
    assertTrue(estimate.within() > 1.5);
  }

  @Test
  void whatIsMissingIsSaid() {
    assertTrue(between(MadeTrials.ofVoices(1, 2)).missing().orElseThrow().contains("there are 2"));
    assertTrue(
        between(MadeTrials.ofVoices(1, 2, 3, 4)).missing().orElseThrow().contains("there are 0"));
  }

  @Test
  void repeatsThatAgreeToTheLastDigitDoNotBreakIt() {
    MadeTrials made = new MadeTrials();
    for (int machine = 1; machine <= 4; machine++) {
      made.by(machine).on(machine).dose(machine);
      made.by(machine).on(machine).dose(machine);
    }
    assertTrue(between(made).estimate().orElseThrow().factor() > 1.5);
  }
}
