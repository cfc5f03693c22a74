package club.emberwell.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Reading;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import org.hipparchus.fraction.BigFraction;
import org.junit.jupiter.api.Test;

/**
 * Factors against the definitions: inch = 25.4 mm exactly (NIST SP 811 App. B.8, from memory; UCUM
 * 2.2 {@code [in_i]} = 2.54 cm), minute and hour and prefixes of the SI Brochure, 9th ed.
 */
class QuantityUnitsTest {

  @Test
  void factorsAreExactFractions() {
    assertFactor(QuantityKind.SPEED, "mm/min", 1, 60);
    assertFactor(QuantityKind.SPEED, "cm/s", 10, 1);
    assertFactor(QuantityKind.SPEED, "m/s", 1000, 1);
    assertFactor(QuantityKind.SPEED, "m/min", 1000, 60);
    assertFactor(QuantityKind.SPEED, "[in_i]/s", 254, 10);
    assertFactor(QuantityKind.SPEED, "[in_i]/min", 254, 600);
    assertFactor(QuantityKind.SPEED, "[ft_i]/min", 508, 100);
    assertFactor(QuantityKind.POWER, "mW", 1, 1000);
    assertFactor(QuantityKind.REPETITION_RATE, "Hz", 1, 1000);
    assertFactor(QuantityKind.PULSE_DURATION, "fs", 1, 1_000_000);
    assertFactor(QuantityKind.THICKNESS, "[mil_i]", 254, 10_000);
    assertFactor(QuantityKind.AREAL_DOSE, "J/cm2", 1, 100);
    assertFactor(QuantityKind.AREAL_DOSE, "J/m2", 1, 1_000_000);
    assertFactor(QuantityKind.AREAL_DOSE, "J/[in_i]2", 100, 64516);
    assertFactor(QuantityKind.LINE_DOSE, "J/cm", 1, 10);
    assertFactor(QuantityKind.LINE_DOSE, "J/[in_i]", 10, 254);
    assertFactor(QuantityKind.IRRADIANCE, "W/cm2", 10_000, 1);
    assertFactor(QuantityKind.IRRADIANCE, "mW/cm2", 10, 1);
    // 0.3048^3 * 60
    assertFactor(QuantityKind.AIR_FLOW, "[cft_i]/min", 169901079552L, 100_000_000_000L);
    assertFactor(QuantityKind.VOLUME, "[cft_i]", 28_316_846_592L, 1_000_000_000_000L);
  }

  @Test
  void publishedRoundTripsAgreeToTheLastPrintedDigit() {
    assertInUnit("1 in/s", QuantityKind.SPEED, "mm/min", "1524");
    assertInUnit("1 in/s", QuantityKind.SPEED, "[in_i]/min", "60");
    assertInUnit("3000 mm/min", QuantityKind.SPEED, "mm/s", "50");
    assertInUnit("3000 mm/min", QuantityKind.SPEED, "[in_i]/min", "118.1102362");
    assertInUnit("100 in/min", QuantityKind.SPEED, "mm/s", "42.333333");
    assertInUnit("254 dpi", QuantityKind.LINE_SPACING, "mm", "0.1");
    assertInUnit("254 dpi", QuantityKind.LINE_SPACING, "{line}/cm", "100");
    assertInUnit("254 dpi", QuantityKind.LINE_SPACING, "{line}/mm", "10");
    assertInUnit("300 dpi", QuantityKind.LINE_SPACING, "mm", "0.0846667");
    assertInUnit("300 dpi", QuantityKind.LINE_SPACING, "{line}/cm", "118.1102");
    assertInUnit("500 dpi", QuantityKind.LINE_SPACING, "mm", "0.0508");
    assertInUnit("508 dpi", QuantityKind.LINE_SPACING, "mm", "0.05");
    assertInUnit("600 dpi", QuantityKind.LINE_SPACING, "mm", "0.0423333");
    assertInUnit("1000 dpi", QuantityKind.LINE_SPACING, "um", "25.4");
    assertInUnit("1270 dpi", QuantityKind.LINE_SPACING, "mm", "0.02");
    assertInUnit("2540 dpi", QuantityKind.LINE_SPACING, "mm", "0.01");
    assertInUnit("1/16 in", QuantityKind.THICKNESS, "mm", "1.5875");
    assertInUnit("1/8 in", QuantityKind.THICKNESS, "mm", "3.175");
    assertInUnit("1/4 in", QuantityKind.THICKNESS, "mm", "6.35");
    assertInUnit("3 mil", QuantityKind.THICKNESS, "mm", "0.0762");
    assertInUnit("3/32 in", QuantityKind.THICKNESS, "mm", "2.38125");
    assertInUnit("1 J/in2", QuantityKind.AREAL_DOSE, "J/mm2", "0.0015500031");
    assertInUnit("1 J/in", QuantityKind.LINE_DOSE, "J/mm", "0.03937007874");
  }

  @Test
  void dotsPerInchGiveAnExactSpacingWhereBinaryArithmeticDoesNot() {
    Quantity quantity = QuantityReader.read(QuantityKind.LINE_SPACING, "254 dpi").value().get();
    assertEquals(new BigDecimal("0.1"), quantity.value());
    assertEquals(0.1, quantity.doubleValue());
  }

  @Test
  void ucumCodesAreCaseSensitiveAndKeepToTheirDimension() {
    Map<String, String> refused =
        Map.of(
            "[IN_I]/s", "unit-unknown",
            "mm/m", "unit-of-other-dimension",
            "W", "unit-of-other-dimension",
            "kBq", "unit-unknown",
            "((((mm/s", "unit-unknown",
            "mm/s{", "unit-unknown",
            "mm/", "unit-unknown",
            "", "unit-missing",
            "mm/s2", "unit-of-other-dimension",
            "[lne]/s", "unit-unknown");
    refused.forEach(
        (code, id) -> {
          Reading<Quantity> reading = QuantityReader.read(QuantityKind.SPEED, BigDecimal.ONE, code);
          assertTrue(reading.value().isEmpty(), code);
          assertEquals(id, reading.remarks().get(0).id(), code);
        });
  }

  @Test
  void aTypographicLineIsNotALineOfAScan() {
    // UCUM's [lne] is a twelfth of an inch.
    assertTrue(
        QuantityReader.read(QuantityKind.LINE_SPACING, BigDecimal.ONE, "[lne]").value().isEmpty());
    for (String code : List.of("{line}/mm", "{lines}/mm", "{dot}/mm", "/mm", "mm-1")) {
      BigDecimal ten = BigDecimal.TEN;
      Reading<Quantity> reading = QuantityReader.read(QuantityKind.LINE_SPACING, ten, code);
      assertEquals(new BigDecimal("0.1"), reading.value().orElseThrow().value(), code);
      assertTrue(QuantityReader.read(QuantityKind.THICKNESS, ten, code).value().isEmpty(), code);
    }
  }

  @Test
  void aUsSurveyInchIsNotAnInternationalOne() {
    // 100/3937 m against 0.0254 m.
    Reading<Quantity> survey =
        QuantityReader.read(QuantityKind.THICKNESS, BigDecimal.valueOf(3937), "[in_us]");
    assertEquals(new BigDecimal("100000"), survey.value().orElseThrow().value());
  }

  @Test
  void aStructuredPercentMayBeWrittenAsItsFraction() {
    BigDecimal value = new BigDecimal("0.8");
    assertEquals(
        new BigDecimal("80"),
        QuantityReader.read(QuantityKind.POWER_PERCENT, value, "1").value().orElseThrow().value());
    assertTrue(QuantityReader.read(QuantityKind.POWER_PERCENT, value, "deg").value().isEmpty());
  }

  @Test
  void theStructuredFormIsKeptAsWritten() {
    Reading<Quantity> reading =
        QuantityReader.read(QuantityKind.SPEED, new BigDecimal("12"), "[in_i]/s");
    assertEquals("12 [in_i]/s", reading.written());
    assertEquals("12 [in_i]/s", reading.value().orElseThrow().written());
    assertEquals(
        new CanonicalValue(new BigDecimal("304.8"), "mm/s"),
        QuantityPrinter.canonical(reading.value().orElseThrow()));
  }

  private static void assertFactor(QuantityKind kind, String code, long above, long below) {
    assertEquals(
        new BigFraction(above, below),
        UcumCodes.conversion(code, kind).orElseThrow().factor(),
        code);
  }

  private static void assertInUnit(String text, QuantityKind kind, String code, String expected) {
    Quantity quantity = QuantityReader.read(kind, text).value().orElseThrow();
    BigFraction value =
        UcumCodes.tabled(code, kind).fromCanonical(ExactNumbers.fraction(quantity.value()));
    BigDecimal printed = new BigDecimal(expected);
    BigDecimal exact = ExactNumbers.decimal(value);
    BigDecimal rounded = exact.setScale(Math.max(0, printed.scale()), RoundingMode.HALF_EVEN);
    assertEquals(0, printed.compareTo(rounded), text + " in " + code + " is " + exact);
  }
}
