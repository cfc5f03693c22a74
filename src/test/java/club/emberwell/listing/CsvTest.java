package club.emberwell.listing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvTest {
  // Formula injection: OWASP, "CSV Injection" (cells that begin with = + - @, tab or return).
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "=1+1|'=1+1",
        "+2 mm|'+2 mm",
        "-2+3|'-2+3",
        "-cmd|'-cmd",
        "@SUM(A1)|'@SUM(A1)",
        "\uff1d1|'\uff1d1",
        "'tis|''tis",
        "-3|-3",
        "-0.5|-0.5",
        "+1|+1",
        "1e-3|1e-3",
        "plain|plain",
        "a,b|\"a,b\"",
        "say \"x\"|\"say \"\"x\"\"\""
      },
      quoteCharacter = '~')
  void aTextIsNeverAFormulaAndANumberStaysOne(String text, String cell) {
    assertEquals(cell, Csv.cell(text));
  }

  @Test
  void tabsAndLineBreaksInFrontAreDefusedToo() {
    assertEquals("'\t=1", Csv.cell("\t=1"));
    assertEquals("\"'\n=1\"", Csv.cell("\n=1"));
    assertEquals("\"'\r=1\"", Csv.cell("\r=1"));
  }

  @Test
  void aLineHoldsNumbersTruthValuesTextsAndNothing() {
    assertEquals(
        "-3,0.08,304.8,true,,\"a, b\"\r\n",
        Csv.line(Arrays.asList(-3, 0.08, 304.8, true, null, "a, b")));
    assertEquals("40,-2\r\n", Csv.line(Arrays.asList(40.0, -2.0)));
  }
}
