package club.emberwell.web.frame;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FieldNameTest {
  @ParameterizedTest
  @CsvSource({
    "/notes, notes",
    "/settings/lineSpacing, line spacing",
    "/settings/repetitionRate, frequency",
    "/trials/0/settings/power, trial 1: power",
    "/trials/2/effect, trial 3: effect",
    "evidence.source, evidence: source",
    "colour anchor, colour anchor"
  })
  void aPointerReadsInWords(String pointer, String words) {
    assertEquals(words, FieldName.of(pointer));
  }
}
