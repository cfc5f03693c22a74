package club.emberwell.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.bench.Housing;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What every card begins with, at closed and at open machines. */
class StandingLineTest {
  @Test
  void theyGoThroughWhatTheIssueNames() {
    assertEquals(
        List.of("extraction", "extinguisher", "glasses", "housing", "watch", "material"),
        Arrays.stream(StandingLine.values()).map(StandingLine::code).toList());
  }

  // class 4 begins above 0.5 W of a continuous beam: IEC 60825-1
  @ParameterizedTest
  @CsvSource({
    "INTERLOCKED, 40, no interlock is bridged",
    "CLOSED, 40, The housing is closed",
    "OPEN, 40, Open class 4 beam",
    "OPEN, 0.4, Open beam",
    ", 40, count the beam as open class 4"
  })
  void theHousingReadsAsTheMachineIs(Housing housing, double watts, String says) {
    String line = StandingLine.HOUSING.at(housing, watts);
    assertTrue(line.contains(says), line);
    assertEquals(housing != Housing.OPEN, line.contains("The housing is closed"), line);
  }

  @Test
  void noLinePromisesAnything() {
    for (StandingLine line : StandingLine.values()) {
      assertFalse(
          line.anywhere().matches("(?i).*\\b(safe|recommended|optimal)\\b.*"), line.anywhere());
    }
  }
}
