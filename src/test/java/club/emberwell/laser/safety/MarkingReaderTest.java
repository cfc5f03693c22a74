package club.emberwell.laser.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.Reading;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Lines as they are printed on glasses. Forms: EN 207's "D 1064 LB6" and "180-315 D LB10" as two
 * encyclopaedia mirrors show them; "OD 6+ @ 900-1070 nm" of ANSI Z136.7 from memory.
 */
class MarkingReaderTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "D 1064 LB6                | 1064-1064 D LB6",
        "DI 900-1070 LB5           | 900-1070 DI LB5",
        "OD 6+ @ 900-1070 nm       | 900-1070 OD6.0",
        "180-315 D LB10            | 180-315 D LB10",
        "180-315 D LB10 + IR LB4   | 180-315 D LB10; 180-315 IR LB4",
        "DIRM 750-1200 LB5         | 750-1200 DIRM LB5",
        "D I R 750-1200 LB5        | 750-1200 DIR LB5",
        ">315-532 D LB5            | 315-532 D LB5",
        "190–534 nm OD≥7           | 190-534 OD7.0",
        "od7+ 190-534nm            | 190-534 OD7.0",
        "OD 6+ @ 190-400, 900-1070 | 190-400 OD6.0; 900-1070 OD6.0",
        "OD 6+ @ 190-400,900-1070  | 190-400 OD6.0; 900-1070 OD6.0",
        "190-400 OD 7+, 900-1070 nm OD 5,5+ | 190-400 OD7.0; 900-1070 OD5.5",
        "D 1064 LB6 OD 7           | 1064-1064 D LB6; 1064-1064 OD7.0",
        "D 900-1070 LB5, IR 900-1070 LB6 | 900-1070 D LB5; 900-1070 IR LB6",
        "OD 5 10.6 µm              | 10600-10600 OD5.0",
        "OD 5 9 - 11 um            | 9000-11000 OD5.0",
        "10600 nm: OD 5            | 10600-10600 OD5.0",
      })
  void aLineIsReadAsItIsPrinted(String line, String expected) {
    assertEquals(expected, read(line));
  }

  private static String read(String line) {
    Reading<List<Protection>> reading = MarkingReader.line(line);
    return reading.value().orElseThrow(() -> new AssertionError(reading.remarks())).stream()
        .map(MarkingReaderTest::shown)
        .collect(Collectors.joining("; "));
  }

  private static String shown(Protection p) {
    String range = "%.0f-%.0f ".formatted(p.fromNm(), p.toNm());
    return p.opticalDensity() == null
        ? range + p.letters().replace(" ", "") + " LB" + p.scaleNumber()
        : range + "OD" + p.opticalDensity();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "OD six @ 900 nm    | OD needs a number behind it",
        "900-1070 nm        | What it protects is missing",
        "OD 6               | The wavelengths are missing",
        "1064 LB6           | LB6 needs its letters in front",
        "D 1064             | The letters D have no LB number",
        "D 1064 I LB6       | The letters D have no LB number",
        "D 1064 LB11        | Scale numbers run from LB1 to LB10",
        "D 1064 L6          | “L6” is not understood",
        "OD 60 @ 1064       | An optical density lies above 0 and not above 15",
        "OD 6 1070-900      | The wavelengths run backwards",
        "OD 6 10.6          | 10.6 is no wavelength here",
        "OD 6 1,064 nm      | 1 is no wavelength here",
        "OD 6 900-1070 OD 5 | Write each range of wavelengths with its number on its own line",
        "all lasers         | “ALL” is not understood",
      })
  void whatCannotBeReadIsSaid(String line, String why) {
    Reading<List<Protection>> reading = MarkingReader.line(line);
    assertTrue(reading.value().isEmpty(), line);
    assertEquals(1, reading.remarks().size());
    String said = reading.remarks().get(0).detail();
    assertTrue(said.startsWith(why), said);
  }

  @Test
  void whatStandsBesideTheNumbersIsLeftOutAndSaidSo() {
    Reading<List<Protection>> reading = MarkingReader.line("D 1064 LB6 CE EN 207 VLT 25 %");
    assertEquals(1, reading.value().orElseThrow().size());
    assertTrue(reading.remarks().get(0).detail().contains("VLT 25 %"));
  }

  @Test
  void aReadingIsToldInWords() {
    assertEquals(
        "900 to 1070 nm: optical density 5,5",
        MarkingReader.line("OD 5.5 900-1070")
            .value()
            .orElseThrow()
            .get(0)
            .sentence(NumberStyle.DECIMAL_COMMA));
    assertEquals(
        "1064 nm: LB6 for D (continuous), R (pulses of 1 ns to 1 µs)",
        MarkingReader.line("RD 1064 LB6").value().orElseThrow().get(0).sentence(NumberStyle.ANY));
  }
}
