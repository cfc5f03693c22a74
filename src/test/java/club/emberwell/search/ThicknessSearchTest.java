package club.emberwell.search;

import static org.junit.jupiter.api.Assertions.assertEquals;

import club.emberwell.report.ReportSnapshot;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A thickness typed in the box. */
class ThicknessSearchTest {
  @TempDir static Path folder;
  private static SearchFixture fixture;

  private static final ReportSnapshot THREE =
      ReportMaker.report().of("birch-plywood").thick(3.0, "birch plywood").make();
  private static final ReportSnapshot EIGHTH =
      ReportMaker.report().of("birch-plywood").thick(3.175, "ply, eighth of an inch").make();
  private static final ReportSnapshot TYPED =
      ReportMaker.report().of("birch-plywood").thick(null, "3mm birch ply").make();
  private static final ReportSnapshot SIX =
      ReportMaker.report()
          .of("birch-plywood")
          .thick(6.0, "birch plywood")
          .saying("Focus raised 3 mm, lens 50 mm from the work, 20W tube")
          .make();
  private static final ReportSnapshot SLATE =
      ReportMaker.report().of("slate").thick(3.0, "slate").make();

  @BeforeAll
  static void build() throws InterruptedException {
    FakeClub club = new FakeClub();
    club.save(List.of(THREE, EIGHTH, TYPED, SIX, SLATE));
    fixture = SearchFixture.over(club, folder).settled();
  }

  @AfterAll
  static void stop() {
    fixture.close();
  }

  private static Set<ReportSnapshot> found(String text) {
    return Set.copyOf(fixture.search(text).hits().stream().map(SearchResult.Hit::report).toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "3mm plywood",
        "3 mm plywood",
        "plywood 3mm",
        "plywood, 3 mm thick",
        "3MM birch ply",
        "0.3 cm plywood"
      })
  void aThicknessFindsItsClassAndWhatIsTypedSoHoweverItIsSpelled(String text) {
    Set<ReportSnapshot> expected =
        text.contains("cm") ? Set.of(THREE, EIGHTH) : Set.of(THREE, EIGHTH, TYPED);
    assertEquals(expected, found(text));
  }

  @Test
  void anInchFindsItsClassToo() {
    assertEquals(Set.of(THREE, EIGHTH), found("1/8 in plywood"));
    assertEquals(Set.of(SIX), found("6mm plywood"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"50 mm lens", "50mm lens", "20 W tube", "20w tube"})
  void aNumberWithItsUnitThatIsNoThicknessIsLookedForAsWords(String text) {
    assertEquals(Set.of(SIX), found(text));
  }

  @Test
  void aThicknessNothingHasIsLookedForAsWords() {
    assertEquals(Set.of(), found("12 mm plywood"));
  }
}
