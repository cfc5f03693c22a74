package club.emberwell.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Coded;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

/** What people type is found; what means nothing or several things is left open. */
class EverydaySpellingsTest {
  private final Vocabulary vocabulary = CatalogFiles.catalog().vocabulary();

  @ParameterizedTest
  @CsvFileSource(resources = "/catalog/everyday_spellings.csv", useHeadersInDisplayName = true)
  void isWhatPeopleMean(String kind, String written, String slug) {
    Match match = vocabulary.resolve(Coded.of(TermKind.class, kind).orElseThrow(), written);
    assertEquals(slug, match.term().map(Term::slug).orElse(null));
    assertEquals(written, match.written());
    assertTrue(slug == null || match.candidates().isEmpty());
  }
}
