package club.emberwell.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Reading;
import club.emberwell.remark.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The tables of accepted and refused spellings, by the rules of the API. */
class QuantitySpellingsTest {

  @Test
  void everyAcceptedSpellingGivesItsExactValue() {
    List<String> wrong = new ArrayList<>();
    List<String[]> rows = Rows.of("accepted.csv");
    for (String[] row : rows) {
      Reading<Quantity> reading = QuantityReader.read(QuantityKind.valueOf(row[0]), row[1]);
      String got = reading.value().map(q -> q.value().toPlainString()).orElse("refused");
      if (!got.equals(row[2])) {
        wrong.add(String.join("|", row) + " gave " + got + " " + ids(reading));
      }
      assertEquals(row[1], reading.written());
    }
    assertEquals(List.of(), wrong);
    assertTrue(rows.size() >= 300, "rows " + rows.size());
  }

  @Test
  void everyRefusedSpellingNamesItsReasonAndItsReadings() {
    List<String> wrong = new ArrayList<>();
    List<String[]> rows = Rows.of("refused.csv");
    for (String[] row : rows) {
      Reading<Quantity> reading = QuantityReader.read(QuantityKind.valueOf(row[0]), row[1]);
      String got = ids(reading) + "|" + readings(reading);
      if (reading.value().isPresent() || !got.equals(row[2] + "|" + row[3])) {
        wrong.add(row[0] + "|" + row[1] + "|" + got);
      }
    }
    assertEquals("", String.join("\n", wrong));
    assertTrue(rows.size() >= 150, "rows " + rows.size());
  }

  @Test
  void whatCanMeanOneThingOnlyIsReadWithANoteOfWhatWasLeftOut() {
    List<String> wrong = new ArrayList<>();
    for (String[] row : Rows.of("noted.csv")) {
      Reading<Quantity> reading = QuantityReader.read(QuantityKind.valueOf(row[0]), row[1]);
      String value = reading.value().map(q -> q.value().toPlainString()).orElse("refused");
      String left =
          reading.remarks().stream()
              .flatMap(r -> Pattern.compile("“(.*?)”").matcher(r.detail()).results())
              .map(found -> found.group(1))
              .collect(Collectors.joining("; "));
      String got = String.join("|", value, ids(reading), readings(reading), left);
      if (!got.equals(String.join("|", List.of(row).subList(2, row.length)))) {
        wrong.add(row[0] + "|" + row[1] + "|" + got);
      }
      assertEquals(List.of(), reading.remarks().stream().filter(Remark::isError).toList());
      assertEquals(row[1], reading.value().map(Quantity::written).orElse(row[1]));
    }
    assertEquals("", String.join("\n", wrong));
  }

  @Test
  void everyReadingOfferedIsItselfRead() {
    for (String[] row : Rows.of("refused.csv")) {
      QuantityKind kind = QuantityKind.valueOf(row[0]);
      for (Remark remark : QuantityReader.read(kind, row[1]).remarks()) {
        assertEquals("", remark.field());
        for (String offered : remark.readings()) {
          assertTrue(
              QuantityReader.read(kind, offered).value().isPresent(), row[1] + ": " + offered);
        }
      }
    }
  }

  private static String ids(Reading<Quantity> reading) {
    return reading.remarks().stream().map(Remark::id).collect(Collectors.joining("+"));
  }

  private static String readings(Reading<Quantity> reading) {
    return reading.remarks().stream()
        .flatMap(r -> r.readings().stream())
        .distinct()
        .collect(Collectors.joining("; "));
  }
}
