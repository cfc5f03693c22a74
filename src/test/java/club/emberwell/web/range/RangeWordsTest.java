package club.emberwell.web.range;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.consensus.MadeTrials;
import club.emberwell.consensus.dose.Window;
import club.emberwell.consensus.range.Group;
import club.emberwell.consensus.range.Range;
import club.emberwell.laser.Effect;
import club.emberwell.quantity.QuantityKind;
import club.emberwell.quantity.UnitPreferences;
import club.emberwell.search.query.Measure;
import club.emberwell.stats.Interval;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How many digits a page prints, and what it says of a window. */
class RangeWordsTest {
  private static final MeasureText DOSE =
      new MeasureText(Measure.AREAL_DOSE, UnitPreferences.metric());

  /** 22 mm/s are 0.8661 in/s, 500 mm/s 19.685 in/s. */
  @ParameterizedTest
  @CsvSource({"22, , 0.86", "500, , 19.5", "505, 510, 20", "505, 505, 19.5"})
  void aSpeedOfALineOfEqualDoseCanBeSet(double speed, Double top, String printed) {
    UnitPreferences inches = UnitPreferences.metric().with(QuantityKind.SPEED, "[in_i]/s");
    assertEquals(printed, new MeasureText(Measure.SPEED, inches).settable(speed, top));
  }

  /** To the place of the first digit of half the interval; two digits at least, three at most. */
  @ParameterizedTest(name = "{0} +- {1} is {2}")
  @CsvSource({
    "2.5563, 0.04, 2.56",
    "2.5563, 0.4, 2.6",
    "2.5563, 4, 2.6",
    "2.5563, 0.0004, 2.56",
    "0.012345, 0.0002, 0.0123",
    "1234.5, 3, 1230",
    "304.8, 0, 305",
    "2.5563, NaN, 2.6"
  })
  void aValueIsPrintedToWhatIsKnownOfIt(double value, double half, String printed) {
    assertEquals(printed, DOSE.told(value, half));
  }

  @Test
  void bothEndsOfAnIntervalGoToThePlaceOfHalfOfIt() {
    assertEquals("1.4 to 1.9", DOSE.ends(new Interval(1.3621, 1.8873, 0.95)));
  }

  private static List<String> said(MadeTrials made, Double middle) {
    Group group = made.group();
    Window window = Window.of(group, Range.of(group).dose());
    return WindowWords.of(window, Optional.ofNullable(middle), DOSE);
  }

  private static MadeTrials ladder(int members) {
    MadeTrials made = new MadeTrials();
    for (int member = 1; member <= members; member++) {
      double own = Math.exp(0.1 * Math.sin(3.0 * member));
      made.by(member).dose(0.7 * own).was(Effect.TOO_LITTLE);
      made.by(member).dose(0.95).was(own > 0.95 ? Effect.TOO_LITTLE : Effect.RIGHT);
      made.by(member).dose(1.6 * own);
      made.by(member).dose(2.5).was(own < 1 ? Effect.TOO_MUCH : Effect.RIGHT);
      made.by(member).dose(3.5 * own).was(Effect.TOO_MUCH);
    }
    return made;
  }

  @Test
  void aWindowOfManyIsToldWithItsIntervalsAndItsBestChance() {
    List<String> said = said(ladder(10), 1.6);
    assertTrue(
        said.get(0)
            .matches("Most tests were right between about \\d.* \\(.* to .*\\) and 2.* J/mm²\\."),
        said.toString());
    assertTrue(said.get(1).matches("Best chance: 1\\.\\d J/mm² \\(\\d+ %\\)\\."), said.toString());
    assertEquals(2, said.size());
  }

  @Test
  void aBestChanceFarFromTheMiddleIsSaid() {
    List<String> said = said(ladder(10), 4.0);
    assertEquals("That is far from the middle of what was right, 4 J/mm².", said.get(2));
  }

  @Test
  void fewMembersKnowTheEdgesOnlyRoughly() {
    List<String> said = said(ladder(5), 1.6);
    assertEquals("Where it becomes right is known only roughly.", said.get(0));
    assertEquals("Where it becomes too much is known only roughly.", said.get(1));
  }

  @Test
  void whatNobodyTriedAndWhatIsNotKnownIsSaidWithTheTestThatWouldTellMost() {
    assertEquals(
        List.of("Nobody tried less than 1 J/mm².", "Nobody tried more than 3 J/mm²."),
        said(MadeTrials.ofVoices(1, 2, 3), null));
    MadeTrials singles = MadeTrials.ofVoices(1, 1, 1);
    for (int member = 4; member <= 6; member++) {
      singles.by(member).dose(4).was(Effect.TOO_MUCH);
    }
    assertEquals(
        List.of(
            "Nobody tried less than 1 J/mm².",
            "Where it becomes too much is not known yet.",
            "A test at 2 J/mm² would tell most."),
        said(singles, null));
    assertEquals(
        List.of("With tests by 3 members we can say more. There are 2."),
        said(MadeTrials.ofVoices(1, 2), null));
  }
}
