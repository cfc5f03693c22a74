package club.emberwell.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.query.SearchQuery;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is typed in the box and what it finds; the everyday spellings are common practice. */
class TextSearchTest {
  @TempDir static Path folder;
  private static SearchFixture fixture;

  private static final ReportSnapshot TUMBLER =
      ReportMaker.report()
          .of("stainless-304")
          .coated("powder-coat", "black")
          .saying("Two tumblers, crisp café logo")
          .make();
  private static final ReportSnapshot CARD =
      ReportMaker.report().of("anodised-aluminium").coated("anodised-dyed", "red").make();
  private static final ReportSnapshot CHERRY =
      ReportMaker.report()
          .of("cherry")
          .saying("goes golden, unlike cork")
          .on("Garage galvo on cork")
          .make();
  private static final ReportSnapshot SLATE = ReportMaker.report().of("slate").make();
  private static final ReportSnapshot UNFILED =
      ReportMaker.report().unfiled("Moonstone composite").make();

  @BeforeAll
  static void build() throws InterruptedException {
    FakeClub club = new FakeClub();
    club.save(List.of(TUMBLER, CARD, CHERRY, SLATE, UNFILED));
    fixture = SearchFixture.over(club, folder).settled();
  }

  @AfterAll
  static void stop() {
    fixture.close();
  }

  private static Set<ReportSnapshot> found(String text) {
    return Set.copyOf(fixture.search(text).hits().stream().map(SearchResult.Hit::report).toList());
  }

  @Test
  void aSynonymFindsWhatTheVocabularyCallsOtherwise() {
    assertEquals(Set.of(TUMBLER), found("inox"));
    assertEquals(Set.of(TUMBLER), found("Edelstahl"));
    assertEquals(Set.of(SLATE), found("Schiefer"));
  }

  @Test
  void aWiderWordFindsWhatLiesBelowIt() {
    assertEquals(Set.of(TUMBLER), found("stainless steel"));
  }

  @Test
  void pluralsAccentsAndCaseDoNotMatter() {
    assertEquals(Set.of(TUMBLER), found("tumbler"));
    assertEquals(Set.of(TUMBLER), found("TUMBLERS cafe"));
    assertEquals(Set.of(TUMBLER), found("Cafés"));
  }

  @Test
  void compoundsFindEachOtherHoweverTheyAreJoined() {
    assertEquals(Set.of(TUMBLER), found("powdercoat"));
    assertEquals(Set.of(TUMBLER), found("powder-coat"));
    assertEquals(Set.of(TUMBLER), found("powder coat"));
    assertEquals(Set.of(TUMBLER), found("black powder coated stainless"));
  }

  @Test
  void oneTypoIsForgivenAndSaid() {
    SearchResult result = fixture.search("tumbelr");
    assertEquals(TUMBLER, result.hits().get(0).report());
    assertEquals(Map.of("tumbelr", Set.of("tumbler")), result.guesses());
    assertEquals(Set.of(CHERRY), found("cherrry"));
  }

  @Test
  void britishAndAmericanSpellingsAreTheSame() {
    assertEquals(Set.of(CARD), found("anodized aluminum"));
  }

  @Test
  void aRightWordNeverBringsInItsNeighbours() {
    assertTrue(fixture.search("slate").guesses().isEmpty());
    assertEquals(Set.of(SLATE), found("slate"));
  }

  @Test
  void aMaterialIsLookedForInWhatWasWorkedOnAndNotInRemarks() {
    assertEquals(Set.of(CHERRY), found("garage"));
    assertEquals(Set.of(CHERRY), found("galvo garage"));
    assertEquals(Set.of(), found("cork"));
    assertEquals(Set.of(), found("cork cherry"));
  }

  @Test
  void aNumberIsMeantAsItIs() {
    assertEquals(Set.of(TUMBLER), found("304"));
    assertEquals(Set.of(), found("305"));
  }

  @Test
  void aColourInsideAnotherTermsSynonymIsNotAColour() {
    // "black cherry" is a spelling of cherry
    assertEquals(Set.of(TUMBLER), found("black"));
    assertEquals(Set.of(CHERRY), found("black cherry"));
  }

  @Test
  void theBeginningOfTheLastWordIsEnough() {
    assertEquals(Set.of(CHERRY), found("golden garag"));
  }

  @Test
  void everyWordMustBeFoundButFillersNeedNot() {
    assertEquals(Set.of(), found("slate tumbler"));
    assertEquals(Set.of(CHERRY), found("galvo in the garage"));
  }

  @Test
  void wordsThatWaitForFilingAreFoundAsWritten() {
    assertEquals(Set.of(UNFILED), found("moonstone"));
  }

  @Test
  void nothingFoundNamesTheWordToDrop() {
    SearchResult result = fixture.search("slate xylophone");
    assertEquals(0, result.totalReports());
    assertTrue(
        result.suggestions().stream()
            .anyMatch(s -> s.kind().equals("drop-words") && s.query().text().equals("slate")));
  }

  @Test
  void nothingFoundNamesTheFilterWhoseRemovalGivesMost() {
    SearchQuery query =
        SearchQuery.everything()
            .withFacet("material", List.of("slate"))
            .withFacet("coating", List.of("powder-coat"));
    SearchResult result = fixture.search(query);
    assertEquals(0, result.totalReports());
    SearchResult.Suggestion best = result.suggestions().get(0);
    assertEquals(best.reports(), fixture.search(best.query()).totalReports());
    assertTrue(best.reports() > 0);
  }

  @Test
  void anEmptyMaterialIsWidenedToItsParent() {
    SearchResult result =
        fixture.search(SearchQuery.everything().withFacet("material", List.of("stainless-430")));
    assertTrue(
        result.suggestions().stream()
            .anyMatch(
                s ->
                    s.kind().equals("widen")
                        && s.query().facets().get("material").equals(List.of("stainless-steel"))
                        && s.reports() == 1));
  }

  @Test
  void junkNeverThrows() {
    Random random = new Random(3);
    String[] odd = {
      "AND",
      "OR (",
      "\"",
      "material:",
      "*",
      "?",
      "~9",
      "[a TO b]",
      "\\",
      "\0",
      "é\u0301",
      "😀",
      "'; drop",
      "${x}",
      "\u202e",
      "ﬀ",
      "\ud800",
      "-",
      "+-!(){}^",
      "a".repeat(5000),
      "black "
    };
    for (int i = 0; i < 400; i++) {
      StringBuilder text = new StringBuilder();
      for (int j = random.nextInt(12); j >= 0; j--) {
        text.append(odd[random.nextInt(odd.length)]).append(random.nextBoolean() ? " " : "");
        text.appendCodePoint(random.nextInt(0x2FFF));
      }
      assertFalse(fixture.search(text.toString()).totalReports() < 0);
    }
    fixture.search("black ".repeat(40));
    fixture.search("tumbelr slatee cherrry ".repeat(8));
  }
}
