package club.emberwell.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Map;
import org.junit.jupiter.api.Test;

class UnitPreferencesTest {
  private static final UnitPreferences INCHES =
      UnitPreferences.metric()
          .with(QuantityKind.SPEED, "[in_i]/s")
          .with(QuantityKind.LINE_SPACING, "{dot}/[in_i]");

  @Test
  void theDefaultIsTheCanonicalUnit() {
    for (QuantityKind kind : QuantityKind.values()) {
      UnitChoice unit = UnitPreferences.metric().unit(kind);
      assertEquals(kind.canonicalUnit(), unit.code());
      assertEquals(7.25, QuantityPrinter.value(7.25, kind, UnitPreferences.metric()));
    }
  }

  @Test
  void onlyKnownUnitsGetIn() {
    UnitPreferences metric = UnitPreferences.metric();
    assertThrows(IllegalArgumentException.class, () -> metric.with(QuantityKind.SPEED, "W"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new UnitPreferences(Map.of(QuantityKind.POWER, "hp"), NumberStyle.ANY));
  }

  @Test
  void whatIsStoredByCodeComesBackAndForgetsWhatIsNoChoice() {
    assertEquals(Map.of("speed", "[in_i]/s", "lineSpacing", "{dot}/[in_i]"), INCHES.toMap());
    assertEquals(INCHES, UnitPreferences.fromMap(INCHES.toMap()));
    assertEquals(Map.of(), UnitPreferences.metric().toMap());
    assertEquals(
        UnitPreferences.metric(), UnitPreferences.fromMap(Map.of("speed", "W", "x", "1", "", "")));
  }

  @Test
  void computedValuesHaveFourDigitsAndTheirUnit() {
    UnitPreferences metric = UnitPreferences.metric();
    assertEquals("304.8 mm/s", QuantityPrinter.print(304.8, QuantityKind.SPEED, metric));
    assertEquals("12 in/s", QuantityPrinter.print(304.8, QuantityKind.SPEED, INCHES));
    assertEquals("42.33 mm/s", QuantityPrinter.print(42.333333, QuantityKind.SPEED, metric));
    assertEquals("12346 mm/s", QuantityPrinter.print(12345.678, QuantityKind.SPEED, metric));
    assertEquals("0.08467 mm", QuantityPrinter.print(0.0846667, QuantityKind.LINE_SPACING, metric));
    assertEquals("300 dpi", QuantityPrinter.print(0.0846667, QuantityKind.LINE_SPACING, INCHES));
    assertEquals(
        "42,33 mm/s",
        QuantityPrinter.print(
            42.333333, QuantityKind.SPEED, metric.with(NumberStyle.DECIMAL_COMMA)));
    assertEquals("0 mm", QuantityPrinter.print(0.0, QuantityKind.FOCUS_OFFSET, metric));
    assertEquals("–", QuantityPrinter.number(Double.NaN, NumberStyle.ANY));
    assertEquals("in/s", QuantityPrinter.unitLabel(QuantityKind.SPEED, INCHES));
  }

  @Test
  void aReciprocalUnitSaysSo() {
    assertTrue(INCHES.unit(QuantityKind.LINE_SPACING).reciprocal());
    assertEquals(254.0, QuantityPrinter.value(0.1, QuantityKind.LINE_SPACING, INCHES), 1e-12);
  }

  @Test
  void whatAUnitCannotSayExactlyIsPrintedInTheCanonicalOne() {
    BigDecimal tenth = new BigDecimal("0.1");
    String text = QuantityPrinter.print(tenth, QuantityKind.SPEED, INCHES);
    assertEquals(
        tenth, QuantityReader.read(QuantityKind.SPEED, text).value().orElseThrow().value(), text);
  }

  @Test
  void anExactTextIsNeverAskedAbout() {
    BigDecimal value = new BigDecimal("1.125");
    UnitPreferences metric = UnitPreferences.metric();
    assertEquals("1.1250 mm", QuantityPrinter.print(value, QuantityKind.THICKNESS, metric));
    assertEquals(
        "1,125 mm",
        QuantityPrinter.print(
            value, QuantityKind.THICKNESS, metric.with(NumberStyle.DECIMAL_COMMA)));
  }
}
