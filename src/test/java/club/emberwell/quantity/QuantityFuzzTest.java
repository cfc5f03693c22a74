package club.emberwell.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/** Whatever comes in, a value in range or a clear refusal comes out, and soon. */
class QuantityFuzzTest {
  private static final int TEXTS = 60_000;
  private static final Duration BOUND = Duration.ofSeconds(60);
  private static final String ALPHABET =
      "0123456789.,' -+/%eE\"'mnuskWHzJinrpdl²³½⅛⁄\u00a0\u202f−–µμ″’:;()[]{}#~±∞①٣٫٬۱５ｍмсВтZol\u200b\ud83d";

  private final Random random = new Random(645_16);

  @Test
  void junkIsReadOrRefusedButNeverThrows() {
    List<String[]> good = Rows.of("accepted.csv");
    List<String[]> bad = Rows.of("refused.csv");
    Assertions.assertTimeout(
        BOUND,
        () -> {
          for (int i = 0; i < TEXTS; i++) {
            List<String[]> seeds = i % 5 == 0 ? bad : good;
            String text = i % 4 == 0 ? junk() : mutated(seeds.get(random.nextInt(seeds.size()))[1]);
            check(kind(), text);
          }
        });
  }

  @Test
  void junkUnitCodesAreReadOrRefusedButNeverThrow() {
    String alphabet = "mMsWJHzinLlhkuc%0123456789-./*()[]_{}' ^²\u0000€";
    List<String> codes =
        List.of("[in_i]/s", "mm/min", "J/[in_i]2", "{line}/mm", "10*-2", "[cft_i]/min", "kHz");
    Assertions.assertTimeout(
        BOUND,
        () -> {
          for (int i = 0; i < TEXTS / 8; i++) {
            StringBuilder code = new StringBuilder(codes.get(random.nextInt(codes.size())));
            for (int edits = 1 + random.nextInt(3); edits > 0; edits--) {
              edit(code, alphabet);
            }
            BigDecimal value = new BigDecimal(random.nextInt(2000) - 100);
            checkOutcome(code.toString(), QuantityReader.read(kind(), value, code.toString()));
          }
        });
  }

  @Test
  void absurdNumbersAreRefusedAtOnce() {
    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(5),
        () -> {
          for (String number :
              List.of("1e999999999", "1e-999999999", "0e999999999", "-1e2147483647", "1e65")) {
            Reading<Quantity> reading =
                QuantityReader.read(QuantityKind.SPEED, new BigDecimal(number), "mm/s");
            assertEquals("out-of-range", reading.remarks().get(0).id(), number);
            assertFalse(
                QuantityReader.read(QuantityKind.SPEED, number + " mm/s").value().isPresent());
          }
          String manyRanges = "1~".repeat(31) + "1W";
          assertFalse(QuantityReader.read(QuantityKind.POWER, manyRanges).value().isPresent());
        });
  }

  private void check(QuantityKind kind, String text) {
    NumberStyle style = NumberStyle.values()[random.nextInt(NumberStyle.values().length)];
    Reading<Quantity> reading = QuantityReader.read(kind, text, style);
    assertEquals(text, reading.written());
    checkOutcome(text, reading);
    for (Remark remark : reading.remarks()) {
      for (String offered : remark.readings()) {
        assertTrue(QuantityReader.read(kind, offered).value().isPresent(), text + " -> " + offered);
      }
    }
  }

  private static void checkOutcome(String text, Reading<Quantity> reading) {
    if (reading.value().isPresent()) {
      BigDecimal value = reading.value().get().value();
      assertTrue(value.precision() <= 34 && value.scale() >= 0, text);
      assertTrue(value.abs().compareTo(QuantityLimits.LARGEST) <= 0, text);
      assertFalse(reading.remarks().stream().anyMatch(Remark::isError), text);
    } else {
      assertTrue(reading.remarks().stream().anyMatch(Remark::isError), text);
    }
  }

  private QuantityKind kind() {
    return QuantityKind.values()[random.nextInt(QuantityKind.values().length)];
  }

  private String junk() {
    StringBuilder text = new StringBuilder();
    for (int length = random.nextInt(80); length > 0; length--) {
      text.append(
          random.nextInt(10) == 0
              ? (char) random.nextInt(Character.MAX_VALUE)
              : ALPHABET.charAt(random.nextInt(ALPHABET.length())));
    }
    return text.toString();
  }

  private String mutated(String seed) {
    StringBuilder text = new StringBuilder(seed);
    for (int edits = 1 + random.nextInt(4); edits > 0; edits--) {
      edit(text, ALPHABET);
    }
    return text.toString();
  }

  private void edit(StringBuilder text, String alphabet) {
    char c = alphabet.charAt(random.nextInt(alphabet.length()));
    int at = text.isEmpty() ? 0 : random.nextInt(text.length());
    switch (random.nextInt(4)) {
      case 0 -> text.insert(at, c);
      case 1 -> text.append(text.substring(at));
      case 2 -> text.delete(at, Math.min(text.length(), at + 1));
      default -> text.replace(at, Math.min(text.length(), at + 1), String.valueOf(c));
    }
  }
}
