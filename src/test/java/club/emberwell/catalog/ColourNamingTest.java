package club.emberwell.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ColourNamingTest {
  private final ColourNaming naming = CatalogFiles.catalog().colours();

  /** Sharma, Wu and Dalal 2005, table 1, published to four decimals. */
  @ParameterizedTest
  @CsvFileSource(
      resources = "/reference/statistics/ciede2000_sharma34.csv",
      useHeadersInDisplayName = true)
  void theDifferenceIsThePublishedOne(
      int pair, double l1, double a1, double b1, double l2, double a2, double b2, double expected) {
    Lab first = new Lab(l1, a1, b1);
    Lab second = new Lab(l2, a2, b2);
    assertEquals(expected, Ciede2000.difference(first, second), 5e-5);
    assertEquals(expected, Ciede2000.difference(second, first), 5e-5);
  }

  /** CSS Color 4 names, Lab computed with R's farver; libraries differ by up to 0.02. */
  @ParameterizedTest
  @CsvFileSource(
      resources = "/reference/statistics/css_named_colours_lab.csv",
      useHeadersInDisplayName = true)
  void labOfEveryCssColourIsTheReferenceValue(
      String name, String hex, int r, int g, int blue, double l, double a, double b) {
    int rgb = CatalogFiles.cssColours().get(name);
    assertEquals(r << 16 | g << 8 | blue, rgb);
    assertEquals(rgb, ColourNaming.rgb(hex).orElseThrow());
    Lab lab = Lab.ofRgb(rgb);
    assertEquals(l, lab.l(), 0.02);
    assertEquals(a, lab.a(), 0.02);
    assertEquals(b, lab.b(), 0.02);
    assertTrue(naming.name(name).isPresent());
  }

  @ParameterizedTest
  @CsvSource({
    "'#000', black",
    "'#FFFFFF', white",
    "'#1b2545', navy",
    "'1b2546', navy",
    "'#00f', blue",
    "navy, navy",
    "MidnightBlue, navy",
    "dim gray, grey",
    "'#3a3d40', charcoal",
    "royalblue, blue",
    "crimson, red",
    "dark-orange, orange",
    "deepskyblue, light-blue",
    "rebeccapurple, purple",
    "lightgray, silver",
    "Marineblau, navy",
    "gun-metal, charcoal"
  })
  void isNamedAsOneOfOurWords(String written, String slug) {
    assertEquals(slug, naming.name(written).orElseThrow().term().slug());
  }

  @Test
  void everyAnchorIsNamedAsItself() {
    for (Term term : CatalogFiles.catalog().vocabulary().terms(TermKind.COLOUR)) {
      if (term.hex() != null) {
        ColourNaming.Named named = naming.name(term.hex()).orElseThrow();
        assertEquals(term.slug(), named.term().slug());
        assertEquals(0, named.distance(), 1e-12);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "#12", "#12345", "#1234567", "#ggg", "fff", "polkadot-ish", "rgb(1,2)"})
  void isNoColour(String written) {
    assertTrue(naming.name(written).isEmpty(), written);
  }
}
