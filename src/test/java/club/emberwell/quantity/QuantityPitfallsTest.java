package club.emberwell.quantity;

import static club.emberwell.quantity.QuantityKind.BEAM_DIAMETER;
import static club.emberwell.quantity.QuantityKind.FOCUS_OFFSET;
import static club.emberwell.quantity.QuantityKind.LINE_SPACING;
import static club.emberwell.quantity.QuantityKind.POWER;
import static club.emberwell.quantity.QuantityKind.POWER_PERCENT;
import static club.emberwell.quantity.QuantityKind.PULSE_DURATION;
import static club.emberwell.quantity.QuantityKind.REPETITION_RATE;
import static club.emberwell.quantity.QuantityKind.SPEED;
import static club.emberwell.quantity.QuantityKind.THICKNESS;
import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The traps in what people type, one by one. */
class QuantityPitfallsTest {

  @Test
  void aSingleMarkBeforeThreeDigitsIsAskedAbout() {
    assertAsked(SPEED, "1,000 mm/min", "number-ambiguous", "1 mm/min", "1000 mm/min");
    assertAsked(SPEED, "4.500 mm/s", "number-ambiguous", "4.5 mm/s", "4500 mm/s");
  }

  @Test
  void aCommaIsADecimalMarkWhenTheIntegerPartIsZero() {
    assertValue("0.125", LINE_SPACING, "0,125 mm");
    assertValue("0.1", LINE_SPACING, "0,1 mm");
  }

  @Test
  void aMembersNumberStyleSettlesTheMarkForThatMember() {
    assertStyled("1000", "1,000 mm/s", NumberStyle.DECIMAL_POINT);
    assertStyled("1", "1,000 mm/s", NumberStyle.DECIMAL_COMMA);
    assertStyled("4.5", "4.500 mm/s", NumberStyle.DECIMAL_POINT);
    assertStyled("4500", "4.500 mm/s", NumberStyle.DECIMAL_COMMA);
    assertStyled("0.125", "0,125 mm/s", NumberStyle.DECIMAL_POINT);
    assertStyled("12.5", "12,5 mm/s", NumberStyle.DECIMAL_POINT);
  }

  @Test
  void groupsMayBeSpacedOrHaveApostrophes() {
    for (String gap : List.of(" ", "\u00a0", "\u202f", "'", "\u2019")) {
      assertValue("1000", SPEED, "1" + gap + "000 mm/s");
    }
  }

  @Test
  void aFractionIsReadWhereItCannotBeTwoValues() {
    assertValue("3.175", THICKNESS, "1/8\"");
    assertValue("38.1", THICKNESS, "1-1/2 in");
    assertValue("38.1", THICKNESS, "1 1/2 in");
    assertValue("38.1", THICKNESS, "1\u00bd in");
    assertValue("3.175", THICKNESS, "\u215b\u2033");
    assertAsked(THICKNESS, "1/8", "unit-missing", "1/8 in", "1/8 mm");
    assertValue("4.7625", SPEED, "3/16 in/s");
    assertValue("63.5", SPEED, "2\u00bd in/s");
    assertAsked(POWER, "20/40 W", "fraction-not-here", "0.5 W", "20 W", "40 W");
  }

  @Test
  void aVulgarFractionAfterADigitDoesNotRunIntoIt() {
    // Plain compatibility folding turns this into 11/8.
    assertValue("28.575", THICKNESS, "1\u215b in");
    assertAsked(THICKNESS, "11/2 in", "fraction-ambiguous", "5.5 in", "1 1/2 in");
  }

  @Test
  void aRaisedDigitAfterANumberIsNoDigitOfIt() {
    assertAsked(SPEED, "10\u00b2 mm/s", "unreadable-character");
  }

  @Test
  void millimetresPerMIsOneKeyFromTwoUnits() {
    assertAsked(SPEED, "600 mm/m", "unit-ambiguous", "600 mm/min", "600 mm/s");
    assertAsked(SPEED, "600 mms", "unit-ambiguous", "600 mm/s", "600 mm/min");
    assertAsked(SPEED, "600 MMPM", "unit-ambiguous", "600 mm/min", "600 mm/s");
  }

  @Test
  void aBareNumberIsAskedAbout() {
    assertAsked(SPEED, "600", "unit-missing", "600 mm/s", "600 mm/min", "600 in/s", "600 in/min");
  }

  @Test
  void caseMattersOnlyWhereItIsAMilliardTimes() {
    assertValue("20", REPETITION_RATE, "20 khz");
    assertValue("20", REPETITION_RATE, "20 KHZ");
    assertValue("1000", REPETITION_RATE, "1 Mhz");
    assertAsked(REPETITION_RATE, "1 mHz", "read-as", "1 MHz");
    assertValue("0.5", POWER, "500 mW");
    assertAsked(POWER, "500 mw", "unit-ambiguous", "500 mW", "500 MW");
  }

  @Test
  void bothMicroSignsAreTheSame() {
    assertValue("50", BEAM_DIAMETER, "50 \u00b5m");
    assertValue("50", BEAM_DIAMETER, "50 \u03bcm");
    assertValue("50", BEAM_DIAMETER, "50 um");
    assertValue("50", BEAM_DIAMETER, "50 microns");
  }

  @Test
  void linesAndDotsPerLengthAreSpacings() {
    assertValue("0.1", LINE_SPACING, "254 dpi");
    assertValue("0.1", LINE_SPACING, "100 lines/cm");
    assertValue("0.1", LINE_SPACING, "10 lines per mm");
    assertAsked(THICKNESS, "254 dpi", "unit-of-other-dimension");
  }

  @Test
  void aShareOfTheRatedPowerNamesItsWhole() {
    assertValue("80", POWER_PERCENT, "8/10");
    assertValue("80", POWER_PERCENT, "S800/1000");
    assertAsked(POWER_PERCENT, "0.8", "unit-missing", "0.8 %", "80 %");
    assertAsked(POWER_PERCENT, "S200", "denominator-missing", "S200/1000", "S200/255");
  }

  @Test
  void onlyAFocusOffsetMayBeBelowZero() {
    assertValue("-2", FOCUS_OFFSET, "-2 mm");
    assertValue("0", FOCUS_OFFSET, "0 mm");
    assertAsked(THICKNESS, "-2 mm", "negative");
    assertAsked(SPEED, "0 mm/s", "zero");
  }

  @Test
  void aDashIsAMinusInFrontAndARangeBetween() {
    assertValue("-2", FOCUS_OFFSET, "\u22122 mm");
    assertValue("-2", FOCUS_OFFSET, "\u20132 mm");
    assertAsked(POWER, "20\u201330 W", "range-given", "20 W", "30 W");
    assertAsked(POWER, "20-30 W", "range-given", "20 W", "30 W");
  }

  @Test
  void aPulseDurationWithoutAUnitIsAskedAbout() {
    assertAsked(PULSE_DURATION, "200", "unit-missing", "200 ns", "200 \u00b5s", "200 ms", "200 ps");
  }

  @Test
  void aGaugeNeedsItsMetal() {
    assertAsked(
        THICKNESS,
        "16 ga",
        "gauge-needs-metal",
        "0.0598 in",
        "0.0635 in",
        "0.0625 in",
        "0.0508 in");
    Reading<Quantity> steel = QuantityReader.read(THICKNESS, "16 ga steel");
    assertEquals("1.51892", steel.value().orElseThrow().value().toPlainString());
    assertEquals("gauge-table", steel.remarks().get(0).id());
    assertEquals("16 ga steel", steel.written());
  }

  private static void assertValue(String expected, QuantityKind kind, String text) {
    Reading<Quantity> reading = QuantityReader.read(kind, text);
    assertEquals(List.of(), reading.remarks(), text);
    assertEquals(expected, reading.value().orElseThrow().value().toPlainString(), text);
  }

  private static void assertStyled(String expected, String text, NumberStyle style) {
    Quantity quantity = QuantityReader.read(SPEED, text, style).value().orElseThrow();
    assertEquals(expected, quantity.value().toPlainString(), text);
  }

  private static void assertAsked(QuantityKind kind, String text, String id, String... readings) {
    Reading<Quantity> reading = QuantityReader.read(kind, text);
    assertEquals(List.of(id), reading.remarks().stream().map(Remark::id).toList(), text);
    assertEquals(List.of(readings), reading.remarks().get(0).readings(), text);
  }
}
