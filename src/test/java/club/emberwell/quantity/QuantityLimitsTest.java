package club.emberwell.quantity;

import static club.emberwell.quantity.QuantityKind.FOCUS_OFFSET;
import static club.emberwell.quantity.QuantityKind.LINE_SPACING;
import static club.emberwell.quantity.QuantityKind.POWER;
import static club.emberwell.quantity.QuantityKind.POWER_PERCENT;
import static club.emberwell.quantity.QuantityKind.SPEED;
import static club.emberwell.quantity.QuantityKind.THICKNESS;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Just at a limit and just past it, and what the writer is told there. */
class QuantityLimitsTest {
  private static final String ABSURD = "That number is out of any range.";

  @Test
  void aTextMayHaveSixtyFourCharacters() {
    String longest = "600" + " ".repeat(57) + "mm/s";
    assertEquals("600", value(SPEED, longest));
    assertTold("A quantity has at most 64 characters.", SPEED, longest + " ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  ", "\t"})
  void nothingIsSaidToBeNothing(String text) {
    assertTold("Nothing was given.", SPEED, text);
    assertTold("Nothing was given.", SPEED, null);
  }

  // Java's whitespace, but not Unicode's: what is left of it is empty
  @Test
  void aLineOfNoBreakSpacesIsNothing() {
    assertTold("Nothing was given.", SPEED, "\u00a0\u00a0");
  }

  // 1e15 and 1e-15 are the limits of what is stored
  @Test
  void theLargestAndTheSmallestValueAreStillRead() {
    assertEquals("1000000000000000", value(POWER, "1e15 W"));
    assertTold(ABSURD, POWER, "1.0001e15 W");
    assertEquals("0.000000000000001", value(POWER, "1e-15 W"));
    assertTold(ABSURD, POWER, "0.9999e-15 W");
    assertEquals("100", value(POWER_PERCENT, "100 %"));
    assertTold("A share of the rated power ends at 100 %.", POWER_PERCENT, "100.1 %");
  }

  @Test
  void aNumberOfTheStructuredFormHasAtMostSixtyFourDigits() {
    BigDecimal most = new BigDecimal("1." + "0".repeat(63));
    assertEquals("1", structured(SPEED, most, "mm/s").value().orElseThrow().value().toString());
    BigDecimal more = new BigDecimal("1." + "0".repeat(64));
    assertEquals(ABSURD, detail(structured(SPEED, more, "mm/s")));
    BigDecimal nought = BigDecimal.ZERO.setScale(64);
    assertTrue(structured(FOCUS_OFFSET, nought, "mm").value().isPresent());
    assertEquals(ABSURD, detail(structured(FOCUS_OFFSET, nought.setScale(65), "mm")));
    assertEquals("There is no number here.", detail(structured(SPEED, null, "mm/s")));
  }

  @Test
  void aUnitThatIsNoCodeIsOfferedAsTextWhereThatCanBeRead() {
    assertEquals(List.of("600 ipm"), readings(structured(SPEED, new BigDecimal(600), "ipm")));
    Reading<Quantity> unknown = structured(SPEED, new BigDecimal(600), "knots");
    assertEquals(List.of(), readings(unknown));
    assertEquals("That is no UCUM code known here; one would be mm/s.", detail(unknown));
    String spaced = "ipm" + " ".repeat(57);
    assertEquals(64, ("600 " + spaced).length());
    assertEquals(List.of(), readings(structured(SPEED, new BigDecimal("6000.0001"), spaced + ".")));
    assertEquals(
        "That unit measures something else; here a unit like mm/s is needed.",
        detail(structured(SPEED, new BigDecimal(600), "W")));
    assertEquals(
        "A unit is needed: a UCUM code such as mm/s.",
        detail(structured(SPEED, new BigDecimal(600), null)));
  }

  // by hand: 1 inch = 25.4 mm
  @ParameterizedTest
  @CsvSource({
    "1 12/16 in, 44.45",
    "16/16 in, 25.4",
    "11/11 in, 25.4",
    "12/2 in, 152.4",
    "10/4 in, 63.5",
    "1 1/2-, ",
    "1 3/3 in, ",
    "1 100/200 in, ",
    "1/0 in, ",
    "01/8 in, ",
  })
  void aFractionIsOneNumberOrNone(String text, String millimetres) {
    Reading<Quantity> reading = QuantityReader.read(THICKNESS, text);
    assertEquals(
        millimetres,
        reading.value().map(quantity -> quantity.value().toPlainString()).orElse(null),
        text);
  }

  // a lost space: 11 23/640, 112 3/640; never a numerator of three digits, never two halves
  @Test
  void aFractionAboveOneMayHaveLostItsSpace() {
    assertEquals(
        List.of("1.7546875 in", "11 23/640 in", "112 3/640 in"),
        readings(QuantityReader.read(THICKNESS, "1123/640 in")));
  }

  // U+215F is the 1/ of a fraction whose other half is typed after it
  @ParameterizedTest
  @ValueSource(
      strings = {
        "600\u007f mm/s",
        "10\u00b2 mm/s",
        "5-\u00b2 mm/s",
        "-\u00b2 mm/s",
        "\u00b2 mm/s",
        "10\u207b mm/s",
        "\u215f8 mm/s",
        "600\u200bmm/s",
        "600\ue000mm/s"
      })
  void aCharacterThatCouldMeanAnotherNumberIsRefused(String text) {
    assertTold("There is a character here that no quantity has.", SPEED, text);
  }

  @Test
  void keyboardsOfTheEastAndOddSpacesAreRead() {
    assertEquals("109", value(SPEED, "\uff11\uff10\uff19 mm/s"));
    assertEquals("600", value(SPEED, "600\u001fmm/s"));
    assertEquals("600", value(SPEED, "600\u3000mm\u2215s"));
    assertEquals("0.5", value(QuantityKind.AREAL_DOSE, "0.5 J mm\u207b\u00b2"));
  }

  @Test
  void aCountPerLengthNeedsNoWordForWhatIsCounted() {
    assertEquals("0.1", value(LINE_SPACING, "10 per mm"));
    assertEquals("0.1", value(LINE_SPACING, "100 per cm"));
  }

  @Test
  void anSWordIsOfferedTheWholesThatCanHoldIt() {
    assertEquals(
        List.of("S100/1000", "S100/255", "S100/100"),
        readings(QuantityReader.read(POWER_PERCENT, "S100")));
    assertEquals(
        List.of("S255/1000", "S255/255"), readings(QuantityReader.read(POWER_PERCENT, "S255")));
    assertEquals(List.of("S1000/1000"), readings(QuantityReader.read(POWER_PERCENT, "S1000")));
    assertEquals(List.of(), readings(QuantityReader.read(POWER_PERCENT, "S1001")));
    assertEquals(
        "An S word needs its whole, such as S800/1000.",
        detail(QuantityReader.read(POWER_PERCENT, "S0")));
    assertFalse(QuantityReader.read(POWER_PERCENT, "8/0").value().isPresent());
  }

  @Test
  void whatIsAskedNamesAUnitOfTheKind() {
    assertTold("A unit is needed, such as mm/s.", SPEED, "600");
    assertTold("Do you mean this unit?", SPEED, "600 mms");
    assertTold("\"W\" measures something else; a unit like mm/s is needed.", SPEED, "600 W");
    assertTold("\"knots\" is no unit known here; one would be mm/s.", SPEED, "600 knots");
    assertTold(
        "This does not start with a number that can be read, such as 12.5 mm/s.", SPEED, "fast");
    assertTold(
        "This does not start with a number that can be read, such as 12.5 mm/s.", SPEED, "+-");
  }

  @Test
  void aPrintedValueIsExactAndAComputedOneHasFourDigits() {
    UnitPreferences inches = UnitPreferences.metric().with(SPEED, "[in_i]/s");
    Quantity typed = QuantityReader.read(SPEED, "7 in/s").value().orElseThrow();
    assertEquals("7 in/s", QuantityPrinter.print(typed, inches));
    assertEquals("177.8 mm/s", QuantityPrinter.print(typed, UnitPreferences.metric()));
    assertEquals("1.235 in/s", QuantityPrinter.print(31.369, SPEED, inches));
    assertEquals("12346", QuantityPrinter.number(12345.6, NumberStyle.ANY));
    assertEquals("0.1235", QuantityPrinter.number(0.123456, NumberStyle.ANY));
    assertEquals("0,1235", QuantityPrinter.number(0.123456, NumberStyle.DECIMAL_COMMA));
    assertEquals("–", QuantityPrinter.number(Double.NaN, NumberStyle.ANY));
  }

  /** No count of lines per length says nought. */
  @Test
  void aSpacingOfNoughtIsPrintedInMillimetres() {
    UnitPreferences lines =
        UnitPreferences.metric()
            .with(
                LINE_SPACING,
                UnitPreferences.choices(LINE_SPACING).stream()
                    .filter(UnitChoice::reciprocal)
                    .findFirst()
                    .orElseThrow()
                    .code());
    assertEquals("0 mm", QuantityPrinter.print(BigDecimal.ZERO, LINE_SPACING, lines));
  }

  @Test
  void anotherUnitForOneKindLeavesTheRest() {
    UnitPreferences changed =
        UnitPreferences.metric()
            .with(NumberStyle.DECIMAL_COMMA)
            .with(SPEED, "[in_i]/s")
            .with(THICKNESS, "[in_i]");
    assertEquals("[in_i]/s", changed.unit(SPEED).code());
    assertEquals("[in_i]", changed.unit(THICKNESS).code());
    assertEquals(NumberStyle.DECIMAL_COMMA, changed.style());
    assertEquals("lineSpacing", LINE_SPACING.code());
  }

  @Test
  void bothEndsOfBoundsAreAllowed() {
    Bounds bounds = new Bounds(1, 4);
    assertTrue(bounds.hold(1) && bounds.hold(4));
    assertFalse(bounds.hold(0.999) || bounds.hold(4.001) || bounds.hold(Double.NaN));
  }

  private static String value(QuantityKind kind, String text) {
    Reading<Quantity> reading = QuantityReader.read(kind, text);
    assertEquals(List.of(), reading.remarks(), text);
    return reading.value().orElseThrow().value().toPlainString();
  }

  private static Reading<Quantity> structured(QuantityKind kind, BigDecimal value, String unit) {
    return QuantityReader.read(kind, value, unit);
  }

  private static void assertTold(String detail, QuantityKind kind, String text) {
    assertEquals(detail, detail(QuantityReader.read(kind, text)), text);
  }

  private static String detail(Reading<Quantity> reading) {
    assertTrue(reading.value().isEmpty(), () -> "read as " + reading.value());
    return reading.remarks().get(0).detail();
  }

  private static List<String> readings(Reading<Quantity> reading) {
    return reading.remarks().stream().map(Remark::readings).flatMap(List::stream).toList();
  }
}
