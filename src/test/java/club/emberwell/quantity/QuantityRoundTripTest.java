package club.emberwell.quantity;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Reading;
import java.io.File;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.BigInteger;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What is printed reads back as the same quantity, in every unit and every number style. */
class QuantityRoundTripTest {
  private static final int PER_CHOICE = 100;

  @Test
  void whatIsPrintedReadsBackAsTheSameQuantity() {
    Random random = new Random(20240617);
    List<String> wrong = new ArrayList<>();
    for (QuantityKind kind : QuantityKind.values()) {
      for (UnitChoice choice : UnitPreferences.choices(kind)) {
        for (NumberStyle style : NumberStyle.values()) {
          UnitPreferences preferences =
              UnitPreferences.metric().with(kind, choice.code()).with(style);
          for (int i = 0; i < PER_CHOICE; i++) {
            BigDecimal value = value(random, kind);
            String text = QuantityPrinter.print(value, kind, preferences);
            Reading<Quantity> back = QuantityReader.read(kind, text, style);
            if (back.value().isEmpty() || !back.value().get().value().equals(value)) {
              wrong.add(kind + " " + value + " printed as " + text + " in " + style);
            }
          }
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void whatWasTypedInAUnitPrintsInThatUnitAgain() {
    for (QuantityKind kind : QuantityKind.values()) {
      for (UnitChoice choice : UnitPreferences.choices(kind)) {
        UnitPreferences preferences = UnitPreferences.metric().with(kind, choice.code());
        for (String number : List.of("1", "2.5", "7", "12", "30", "33.3")) {
          String text = number + " " + choice.label();
          Quantity quantity = QuantityReader.read(kind, text).value().orElseThrow();
          assertEquals(text, QuantityPrinter.print(quantity, preferences));
        }
      }
    }
  }

  @Test
  void everyUnitChoiceIsReadByItsLabelAndByItsUcumCode() {
    for (QuantityKind kind : QuantityKind.values()) {
      assertEquals(kind.canonicalUnit(), UnitPreferences.choices(kind).get(0).code());
      for (UnitChoice choice : UnitPreferences.choices(kind)) {
        BigDecimal two = BigDecimal.valueOf(2);
        BigDecimal value = read(QuantityReader.read(kind, two, choice.code()));
        assertEquals(value, read(QuantityReader.read(kind, "2 " + choice.label())));
        assertEquals(value, read(QuantityReader.read(kind, "2 " + choice.code())));
      }
    }
  }

  @Test
  void theCanonicalJsonFormReadsBackAsTheSameQuantity() {
    Random random = new Random(7);
    for (QuantityKind kind : QuantityKind.values()) {
      for (int i = 0; i < PER_CHOICE; i++) {
        Quantity quantity = new Quantity(kind, value(random, kind), "");
        CanonicalValue json = QuantityPrinter.canonical(quantity);
        assertEquals(quantity.value(), read(QuantityReader.read(kind, json.value(), json.unit())));
      }
    }
  }

  @Test
  void manyReadersAtOnceGetTheSameAnswers() {
    long distinct =
        IntStream.range(0, 2000)
            .parallel()
            .mapToObj(i -> QuantityReader.read(QuantityKind.SPEED, new BigDecimal(12), "[in_i]/s"))
            .map(QuantityRoundTripTest::read)
            .distinct()
            .count();
    assertEquals(1, distinct);
  }

  private static BigDecimal read(Reading<Quantity> reading) {
    assertTrue(reading.value().isPresent(), reading.toString());
    return reading.value().get().value();
  }

  /** From a few digits, as typed, to all 34, as left by a division. */
  private static BigDecimal value(Random random, QuantityKind kind) {
    int bits = 1 + random.nextInt(112);
    BigInteger unscaled = new BigInteger(bits, random).add(BigInteger.ONE);
    BigDecimal value = new BigDecimal(unscaled);
    int magnitude = random.nextInt(9) - 4;
    value = value.movePointLeft(value.precision() - magnitude);
    if (kind == QuantityKind.POWER_PERCENT) {
      value = value.remainder(new BigDecimal(100)).max(new BigDecimal("0.001"));
    }
    boolean negative = kind == QuantityKind.FOCUS_OFFSET && random.nextBoolean();
    return ExactNumbers.plain(negative ? value.negate() : value);
  }

  /** The first use of a unit decides for all later ones, so it may come from any thread. */
  @Test
  void theTableOfUnitsLoadsOnAThreadThatLooksForClassesElsewhere() throws IOException {
    try (URLClassLoader own =
        new URLClassLoader(classPath(), ClassLoader.getPlatformClassLoader())) {
      Class<?> table =
          assertDoesNotThrow(() -> Class.forName("club.emberwell.quantity.UnitTable", true, own));
      assertNotSame(UnitTable.class, table);
    }
  }

  private static URL[] classPath() throws MalformedURLException {
    List<URL> places = new ArrayList<>();
    for (String place : System.getProperty("java.class.path").split(File.pathSeparator)) {
      places.add(new File(place).toURI().toURL());
    }
    return places.toArray(URL[]::new);
  }
}
