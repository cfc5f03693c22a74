package club.emberwell.search.match;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.catalog.CatalogFiles;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.search.query.SearchQuery;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TextReadingTest {
  private static final Vocabulary WORDS = CatalogFiles.catalog().vocabulary();

  private static SearchQuery read(String text) {
    return TextReading.inFacets(SearchQuery.everything().withText(text), WORDS);
  }

  @Test
  void aColourAndACoatingAreReadAsSuch() {
    SearchQuery read = read("navy powder coat");
    assertEquals(
        Map.of("coating", List.of("powder-coat"), "colour", List.of("navy")), read.facets());
    assertEquals("", read.text());
  }

  @Test
  void theLongestPhraseIsOneWord() {
    assertEquals(Map.of("material", List.of("birch-plywood")), read("birch plywood").facets());
  }

  @Test
  void wordsNobodyKnowsStayWords() {
    SearchQuery read = read("slate zebra for grandma");
    assertEquals(Map.of("material", List.of("slate")), read.facets());
    assertEquals("zebra grandma", read.text());
  }

  @Test
  void aFacetThatIsChosenIsNotChosenAgain() {
    SearchQuery oak = SearchQuery.everything().withFacet("material", List.of("oak"));
    SearchQuery read = TextReading.inFacets(oak.withText("slate"), WORDS);
    assertEquals(Map.of("material", List.of("oak")), read.facets());
    assertEquals("slate", read.text());
  }

  @Test
  void nothingTypedIsNothingRead() {
    assertEquals(SearchQuery.everything(), read(""));
  }
}
