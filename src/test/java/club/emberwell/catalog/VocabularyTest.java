package club.emberwell.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.remark.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VocabularyTest {
  private final Vocabulary vocabulary = CatalogFiles.catalog().vocabulary();

  private static Term term(String slug, String parent, String replacedBy, String... synonyms) {
    return new Term(
        TermKind.MATERIAL,
        slug,
        new Term.Words(slug, List.of(synonyms), null),
        parent,
        false,
        null,
        new Term.Standing(replacedBy != null, replacedBy, Term.CLUB, 1));
  }

  private static Vocabulary of(Term... terms) {
    return new Vocabulary(List.of(terms), new Folding(Map.of(), Set.of(), Map.of()));
  }

  @ParameterizedTest
  @CsvSource({
    "stainless-304, stainless-steel",
    "stainless-316, stainless-steel",
    "stainless-steel, stainless-steel",
    "steel, steel",
    "birch-plywood, birch-plywood",
    "no-such-slug, no-such-slug"
  })
  void kindsOfATermThatRespondAlikeAreStoodForByIt(String slug, String stands) {
    assertEquals(stands, vocabulary.respondsAs(TermKind.MATERIAL, slug));
  }

  @ParameterizedTest
  @CsvSource({
    "unobtanium steel sheet, steel",
    "borch plywood, birch-plywood",
    "'plywood 1st grade, baltic birch', birch-plywood",
    "black acrylic, acrylic",
    "stianless steel, stainless-steel",
    "walnt, walnut"
  })
  void aTextThatMatchesNothingNamesTheNearestTerms(String written, String among) {
    Match match = vocabulary.resolve(TermKind.MATERIAL, written);
    assertEquals(Match.Outcome.NONE, match.outcome());
    assertTrue(match.candidates().stream().anyMatch(t -> t.slug().equals(among)), written);
    assertTrue(match.candidates().size() <= CatalogLimits.SUGGESTIONS);
  }

  @Test
  void anAmbiguousTextNamesEveryCandidateAndMatchesNothing() {
    Reading<Term> reading = vocabulary.read(TermKind.MATERIAL, "mirror");
    assertTrue(reading.value().isEmpty());
    assertEquals("term-ambiguous", reading.remarks().get(0).id());
    assertEquals(List.of("Glass mirror", "Mirrored acrylic"), reading.remarks().get(0).readings());
    for (String label : reading.remarks().get(0).readings()) {
      assertTrue(vocabulary.resolve(TermKind.MATERIAL, label).term().isPresent(), label);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"", " ", "???", "\u0000", "🪵", "﷽", "12 mm", "sheet", "''"})
  void junkMatchesNothingAndThrowsNothing(String junk) {
    assertEquals(Match.Outcome.NONE, vocabulary.resolve(TermKind.MATERIAL, junk).outcome());
  }

  @Test
  void aVeryLongTextIsCutBeforeItIsLookedUp() {
    String written = "x".repeat(1_000_000);
    assertEquals(written, vocabulary.resolve(TermKind.MATERIAL, written).written());
  }

  @Test
  void descendantsHoldTheTermItselfAndEverythingBelow() {
    Set<String> wood = vocabulary.descendants(TermKind.MATERIAL, "wood");
    assertTrue(wood.containsAll(Set.of("wood", "oak", "birch-plywood", "cca-treated-wood")));
    assertTrue(vocabulary.descendants(TermKind.MATERIAL, "no-such").isEmpty());
    assertEquals(
        List.of("polymers", "pvc", "pvc-leather"),
        vocabulary.path(TermKind.MATERIAL, "pvc-leather").stream().map(Term::slug).toList());
  }

  @Test
  void aMergedTermRedirectsForEver() {
    Vocabulary merged =
        of(
            term("a", null, "b", "first name"),
            term("b", null, "c"),
            term("c", null, null),
            term("child", "a", null));
    assertEquals("c", merged.successor(TermKind.MATERIAL, "a").orElseThrow().slug());
    assertEquals("c", merged.resolve(TermKind.MATERIAL, "First Names").term().orElseThrow().slug());
    assertEquals(Set.of("c", "child"), merged.descendants(TermKind.MATERIAL, "a"));
    assertEquals(
        List.of("c", "child"),
        merged.path(TermKind.MATERIAL, "child").stream().map(Term::slug).toList());
    assertEquals(List.of("c", "child"), slugs(merged.terms(TermKind.MATERIAL).stream()));
    assertEquals(List.of("a", "b"), slugs(merged.redirects(TermKind.MATERIAL).stream()));
  }

  @Test
  void aSpellingThatTwoTermsShareBecomesClearOnceTheyAreMerged() {
    Term a = term("a", null, null, "same");
    Term b = term("b", null, null, "same");
    assertTrue(of(a, b).resolve(TermKind.MATERIAL, "same").term().isEmpty());
    Term merged = term("a", null, "b", "same");
    assertEquals("b", of(merged, b).resolve(TermKind.MATERIAL, "same").term().orElseThrow().slug());
  }

  @Test
  void theContentHashKnowsContentAndNeitherOrderNorVersion() {
    Term a = term("a", null, null, "x", "y");
    Term b = term("b", "a", null);
    List<Term> reordered = new ArrayList<>(List.of(b, term("a", null, null, "y", "x")));
    Vocabulary other = new Vocabulary(reordered, new Folding(Map.of(), Set.of(), Map.of()));
    assertEquals(of(a, b).contentHash(), other.contentHash());
    assertNotEquals(of(a, b).contentHash(), of(a).contentHash());
    assertNotEquals(of(a).contentHash(), of(term("a", null, null, "x")).contentHash());
  }

  @ParameterizedTest
  @CsvSource({"ab, ab, 0", "ab, ba, 1", "abc, ac, 1", "kitten, sitting, 3", "'', abc, 3"})
  void editsAreCountedWithSwapsAsOne(String a, String b, int edits) {
    assertEquals(edits, Nearness.edits(a, b));
  }

  private static List<String> slugs(Stream<Term> terms) {
    return terms.map(Term::slug).toList();
  }
}
