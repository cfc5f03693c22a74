package club.emberwell.laser.safety;

import static club.emberwell.laser.Printed.assertPrinted;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.laser.Regime;
import club.emberwell.laser.safety.En207.Condition;
import club.emberwell.quantity.NumberStyle;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is printed against what is calculated. Densities of a cw beam: Directive 2006/25/EC and
 * ICNIRP 2013 as in {@code EyewearTest}; scale numbers: EN 207:2017 from encyclopaedia mirrors.
 */
class EyewearCoverageTest {
  // 450 nm 10 W 0.25 s: 4.009, so 4.1; 1064 nm 30 W 10 s: 4.193; CO2 60 W: 3.795; 355 nm 5 W:
  // 2.716;
  // over 4 mm 10 W of 450 nm need LB5, over 5 mm 60 W of CO2 LB4, over 7 mm 30 W of 1064 nm LB5
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "450   | 10 | cw   |   | OD 4 @ 400-460      | BELOW_MINIMUM",
        "450   | 10 | cw   |   | OD 4.1 @ 400-460    | COVERED",
        "450   | 10 | cw   |   | OD 6+ @ 900-1070    | NOT_COVERED",
        "460   | 10 | cw   |   | OD 6+ @ 400-460     | COVERED",
        "460.1 | 10 | cw   |   | OD 6+ @ 400-460     | NOT_COVERED",
        "1064  | 30 | cw   |   | OD 4 @ 1064         | BELOW_MINIMUM",
        "1064  | 30 | cw   |   | OD 4.2 @ 1064       | COVERED",
        "10600 | 60 | cw   |   | OD 3.8 @ 10600      | COVERED",
        "355   | 5  | cw   |   | OD 2.7 @ 190-400    | BELOW_MINIMUM",
        "450   | 10 | cw   | 4 | D 450 LB5           | COVERED",
        "450   | 10 | cw   | 4 | D 450 LB4           | BELOW_MINIMUM",
        "450   | 10 | cw   |   | D 450 LB5           | NO_NUMBER",
        "450   | 10 | cw   |   | D 450 LB5 OD 6      | COVERED",
        "450   | 10 | cw   |   | D 450 LB3           | BELOW_MINIMUM",
        "450   | 10 | cw   | 4 | IR 450 LB7          | NOT_COVERED",
        "10600 | 60 | cw   | 5 | DI 9000-11000 LB4   | COVERED",
        "10600 | 60 | cw   | 5 | DI 9000-11000 LB3   | BELOW_MINIMUM",
        "1064  | 30 | cw   | 7 | D 1064 LB5          | COVERED",
        "1550  | 5  | cw   |   | OD 7 @ 1500-1600    | NO_NUMBER",
        "300   | 5  | cw   |   | OD 7 @ 190-400      | NO_NUMBER",
        "300   | 5  | cw   |   | OD 7 @ 400-460      | NOT_COVERED",
        "1064  | 30 | ns   |   | OD 7 @ 900-1070     | NO_NUMBER",
        "1064  | 30 | ns   |   | OD 4 @ 900-1070     | BELOW_MINIMUM",
        "1064  | 30 | ns   | 7 | D 1064 LB7          | NOT_COVERED",
        "1064  | 30 | ns   | 7 | DIR 1064 LB7        | NO_NUMBER",
      })
  void aPairStandsToABeam(
      double nm, double watts, String regime, Double mm, String printed, Coverage.Cover verdict) {
    EyeBeam beam = new EyeBeam(nm, watts, Regime.of(regime).orElseThrow(), mm, null);
    assertEquals(verdict, cover(printed, beam).verdict(), cover(printed, beam).because());
  }

  private static Coverage cover(String printed, EyeBeam beam) {
    List<Protection> read =
        Stream.of(printed.split(";"))
            .flatMap(line -> MarkingReader.line(line).value().orElseThrow().stream())
            .toList();
    return Coverage.of(read, EyeMinima.of(beam), NumberStyle.ANY);
  }

  // 30 W of 1 mJ, 100 ns: both editions as in EyewearTest, 4.193 and 4.217: the stricter is 4.3
  @Test
  void aTrainThatIsKnownTakesTheStricterEdition() {
    EyeBeam beam = new EyeBeam(1064, 30, Regime.NS, null, new EyeBeam.Pulses(30, 100));
    assertEquals(4.3, EyeMinima.of(beam).density());
    assertEquals(Coverage.Cover.COVERED, cover("OD 4.3 @ 1064", beam).verdict());
    assertEquals(Coverage.Cover.BELOW_MINIMUM, cover("OD 4.2 @ 1064", beam).verdict());
  }

  // physics: one of 30 000 pulses of 20 W over 6 mm would need R LB4, the train needs R LB6
  @Test
  void aTrainIsNotMeasuredByOneOfItsPulses() {
    EyeBeam beam = new EyeBeam(1064, 20, Regime.NS, 6.0, new EyeBeam.Pulses(30, 100));
    assertEquals(6, EyeMinima.of(beam).scales().get(Condition.R).number());
    assertEquals(Coverage.Cover.BELOW_MINIMUM, cover("DR 1064 LB5", beam).verdict());
    assertEquals(Coverage.Cover.COVERED, cover("DR 1064 LB6", beam).verdict());
  }

  @Test
  void severalLinesOfOnePairHelpEachOther() {
    EyeBeam beam = new EyeBeam(1064, 30, Regime.CW, 7.0, null);
    assertEquals(Coverage.Cover.COVERED, cover("OD 2 @ 400-1100;D 1064 LB6", beam).verdict());
  }

  // without a number for pulses nothing may be said to be the minimum
  @Test
  void aPulsedBeamOfWhichNobodySaysMoreHasNoMinimum() {
    EyeMinima minima = EyeMinima.of(new EyeBeam(1064, 30, Regime.NS, 7.0, null));
    assertNull(minima.density());
    assertFalse(minima.scales().containsKey(Condition.R));
    assertTrue(minima.letters().contains(Condition.R));
  }

  // IEC 60825-1: class 3B ends at 0.5 W from 315 nm on, as open tests cite it
  @ParameterizedTest
  @CsvSource({"0.5, false", "0.51, true", "10, true"})
  void aboveHalfAWattAnOpenBeamIsClassFour(double watts, boolean classFour) {
    assertEquals(classFour, new EyeBeam(450, watts, Regime.CW, null, null).classFour());
  }

  // What is needed is rounded up: 3.855 of 980 nm 10 W, 0.4370 m of a matt surface
  @Test
  void needsAndDistancesAreNeverRoundedDown() {
    assertEquals(3.9, Upward.density(3.855));
    assertEquals(4.0, Upward.density(4.0));
    assertEquals(0.438, Upward.distance(0.43702));
    assertEquals(0.437, Upward.distance(0.437));
    assertEquals(19.99, Upward.distance(19.98), 0.011);
  }

  // physics 4.2: with C_p = N^-0.25 of all 300 000 pulses: 4.483
  @Test
  void theOlderRuleOfManyPulsesAgreesWithItsPrintedExample() {
    double limit = EyeLimits.limit(1064, 1e-7).orElseThrow().radiantExposure();
    double exposure = 1e-3 / EyeLimits.areaM2(7);
    assertPrinted("4.483", Eyewear.opticalDensity(exposure, limit * Math.pow(300_000, -0.25)));
  }

  // Directive 2006/25/EC Annex II Table 2.6, T_min
  @ParameterizedTest
  @CsvSource({"355, 1e-9", "532, 18e-6", "1064, 50e-6", "1450, 1e-3", "1550, 10", "2000, 1e-3"})
  void pulsesWithinTheTablesTimeCountAsOne(double nm, double seconds) {
    assertEquals(seconds, EyeLimits.mergingSeconds(nm, EyeLimits.Edition.DIRECTIVE_2006_25));
  }
}
