package club.emberwell.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Reading;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Numbers and units as other languages write them. The numbers are those that the JDK writes by the
 * Unicode Common Locale Data Repository, an outside source.
 */
class QuantityLanguagesTest {
  private static final int NUMBERS = 300;

  @ParameterizedTest
  @CsvSource({
    "de, COMMA",
    "fr, COMMA",
    "es, COMMA",
    "it, COMMA",
    "ru, COMMA",
    "pt, COMMA",
    "de-CH, POINT",
    "en, POINT",
    "ja, POINT",
    "ar-EG-u-nu-arab, ANY",
    "fa-u-nu-arabext, ANY",
    "ar-MA, COMMA",
    "hi-u-nu-deva, POINT",
    "th-u-nu-thai, POINT",
    "ja-u-nu-fullwide, POINT"
  })
  void whatALocaleWritesIsReadAsThatNumberOrAskedAbout(String tag, String decimal) {
    NumberFormat format = NumberFormat.getNumberInstance(Locale.forLanguageTag(tag));
    NumberStyle style = NumberStyle.valueOf(decimal.equals("ANY") ? decimal : "DECIMAL_" + decimal);
    Random random = new Random(tag.hashCode());
    List<String> wrong = new ArrayList<>();
    for (int i = 0; i < NUMBERS; i++) {
      BigDecimal number = number(random);
      String text = format.format(number) + " mm";
      if (!number.equals(read(QuantityKind.FOCUS_OFFSET, text, style))) {
        wrong.add(text + " in " + style);
      }
      Reading<Quantity> plain = QuantityReader.read(QuantityKind.FOCUS_OFFSET, text);
      boolean meant = values(plain).anyMatch(value -> value.compareTo(number) == 0);
      if (!meant) {
        wrong.add(text + " gave " + plain);
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** Whole, or with up to three decimals; below 100000, since not all group by threes above. */
  private static BigDecimal number(Random random) {
    int scale = random.nextInt(4);
    int digits = 1 + random.nextInt(5);
    BigDecimal number =
        new BigDecimal(random.nextInt((int) Math.pow(10, digits)) + 1)
            .add(BigDecimal.valueOf(random.nextInt(1000), 3).setScale(scale, RoundingMode.DOWN))
            .min(new BigDecimal(99_999));
    return ExactNumbers.plain(random.nextBoolean() ? number : number.negate());
  }

  private static Stream<BigDecimal> values(Reading<Quantity> reading) {
    return Stream.concat(
        reading.value().map(Quantity::value).stream(),
        reading.remarks().stream()
            .flatMap(remark -> remark.readings().stream())
            .map(text -> read(QuantityKind.FOCUS_OFFSET, text, NumberStyle.ANY)));
  }

  private static BigDecimal read(QuantityKind kind, String text, NumberStyle style) {
    return QuantityReader.read(kind, text, style).value().map(Quantity::value).orElse(null);
  }

  @Test
  void everySpellingOfTheSharedFileIsRead() {
    UnitFile file = UnitFile.read();
    List<String> wrong = new ArrayList<>();
    file.units()
        .forEach(
            (dimension, units) ->
                units.forEach(
                    unit ->
                        Stream.concat(Stream.of(unit.label(), unit.ucum()), unit.spelled())
                            .forEach(s -> check(Dimension.of(dimension), s, unit.ucum(), wrong))));
    for (UnitFile.Unit atom : file.atoms()) {
      for (Dimension dimension : Dimension.values()) {
        if (UnitTable.knows(dimension, atom.ucum())) {
          atom.spelled().forEach(s -> check(dimension, s, atom.ucum(), wrong));
        }
      }
      boolean time = List.of("s", "min").contains(atom.ucum());
      if (time) {
        atom.spelled().forEach(s -> check(Dimension.SPEED, "mm/" + s, "mm/" + atom.ucum(), wrong));
      }
    }
    for (String per : UnitTable.per()) {
      check(Dimension.SPEED, "mm " + per + " min", "mm/min", wrong);
    }
    assertEquals(List.of(), wrong);
  }

  /** Read as that unit; a spelling of two is asked about, with that unit among the readings. */
  private static void check(Dimension dimension, String spelling, String code, List<String> wrong) {
    QuantityKind kind =
        Stream.of(QuantityKind.values())
            .filter(k -> k.dimension() == dimension)
            .findFirst()
            .orElseThrow();
    BigDecimal meant = read(QuantityReader.read(kind, BigDecimal.valueOf(2), code));
    String text = "2 " + spelling.replaceFirst("^!", "");
    Reading<Quantity> reading = QuantityReader.read(kind, text);
    boolean asked =
        reading.remarks().stream()
            .flatMap(remark -> remark.readings().stream())
            .anyMatch(offered -> meant.equals(read(QuantityReader.read(kind, offered))));
    if (!meant.equals(read(reading)) && !asked) {
      wrong.add(kind + ": " + text + " is " + reading);
    }
  }

  private static BigDecimal read(Reading<Quantity> reading) {
    return reading.value().map(Quantity::value).orElse(null);
  }

  // SI Brochure, 9th edition, table 7: micro is a millionth, whatever sign or word says so
  @ParameterizedTest
  @CsvSource({
    "BEAM_DIAMETER, 5 µm, 5",
    "BEAM_DIAMETER, 5 μm, 5",
    "BEAM_DIAMETER, 5 мкм, 5",
    "PULSE_DURATION, 5 µs, 5000",
    "PULSE_DURATION, 5 мкс, 5000",
    "PULSE_DURATION, 5 μs, 5000",
    "POWER, 5 µW, 0.000005",
    "POWER, 5 мкВт, 0.000005"
  })
  void aPrefixMeansTheSameInEveryScript(QuantityKind kind, String text, String value) {
    assertEquals(new BigDecimal(value), read(QuantityReader.read(kind, text)), text);
  }

  @Test
  void turnsAMinuteAreNoSpeed() {
    for (String text : List.of("20 U/min", "20 U/s", "20 об/мин", "20 tr/min", "20 giri/min")) {
      assertTrue(QuantityReader.read(QuantityKind.SPEED, text).value().isEmpty(), text);
    }
  }
}
