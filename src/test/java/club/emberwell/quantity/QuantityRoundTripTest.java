package club.emberwell.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Reading;
import java.math.BigDecimal;
import java.math.BigInteger;
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
    for (QuantityKind dimension : QuantityKind.values()) {
      for (UnitChoice choice : UnitPreferences.choices(dimension)) {
        for (NumberStyle style : NumberStyle.values()) {
          UnitPreferences preferences =
              UnitPreferences.metric().with(dimension, choice.code()).with(style);
          for (int i = 0; i < PER_CHOICE; i++) {
            BigDecimal value = value(random, dimension);
            String text = QuantityPrinter.print(value, dimension, preferences);
            Reading<Quantity> back = QuantityReader.read(dimension, text, style);
            if (back.value().isEmpty() || !back.value().get().value().equals(value)) {
              wrong.add(dimension + " " + value + " printed as " + text + " in " + style);
            }
          }
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void whatWasTypedInAUnitPrintsInThatUnitAgain() {
    for (QuantityKind dimension : QuantityKind.values()) {
      for (UnitChoice choice : UnitPreferences.choices(dimension)) {
        UnitPreferences preferences = UnitPreferences.metric().with(dimension, choice.code());
        for (String number : List.of("1", "2.5", "7", "12", "30", "33.3")) {
          String text = number + " " + choice.label();
          Quantity quantity = QuantityReader.read(dimension, text).value().orElseThrow();
          assertEquals(text, QuantityPrinter.print(quantity, preferences));
        }
      }
    }
  }

  @Test
  void everyUnitChoiceIsReadByItsLabelAndByItsUcumCode() {
    for (QuantityKind dimension : QuantityKind.values()) {
      assertEquals(dimension.canonicalUnit(), UnitPreferences.choices(dimension).get(0).code());
      for (UnitChoice choice : UnitPreferences.choices(dimension)) {
        BigDecimal two = BigDecimal.valueOf(2);
        BigDecimal value = read(QuantityReader.read(dimension, two, choice.code()));
        assertEquals(value, read(QuantityReader.read(dimension, "2 " + choice.label())));
        assertEquals(value, read(QuantityReader.read(dimension, "2 " + choice.code())));
      }
    }
  }

  @Test
  void theCanonicalJsonFormReadsBackAsTheSameQuantity() {
    Random random = new Random(7);
    for (QuantityKind dimension : QuantityKind.values()) {
      for (int i = 0; i < PER_CHOICE; i++) {
        Quantity quantity = new Quantity(dimension, value(random, dimension), "");
        CanonicalValue json = QuantityPrinter.canonical(quantity);
        assertEquals(
            quantity.value(), read(QuantityReader.read(dimension, json.value(), json.unit())));
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
  private static BigDecimal value(Random random, QuantityKind dimension) {
    int bits = 1 + random.nextInt(112);
    BigInteger unscaled = new BigInteger(bits, random).add(BigInteger.ONE);
    BigDecimal value = new BigDecimal(unscaled);
    int magnitude = random.nextInt(9) - 4;
    value = value.movePointLeft(value.precision() - magnitude);
    if (dimension == QuantityKind.POWER_PERCENT) {
      value = value.remainder(new BigDecimal(100)).max(new BigDecimal("0.001"));
    }
    boolean negative = dimension == QuantityKind.FOCUS_OFFSET && random.nextBoolean();
    return ExactNumbers.plain(negative ? value.negate() : value);
  }
}
