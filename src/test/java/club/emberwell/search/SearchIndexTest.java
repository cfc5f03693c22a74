package club.emberwell.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.catalog.Term;
import club.emberwell.catalog.TermKind;
import club.emberwell.catalog.Vocabulary;
import club.emberwell.entry.EntryState;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.index.IndexHash;
import club.emberwell.search.index.IndexStatus;
import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The index against its database: followed, deleted, damaged, outdated. */
class SearchIndexTest {
  @TempDir Path folder;
  private final FakeClub club = new FakeClub();
  private final InventedReports invented = new InventedReports(11);

  @BeforeEach
  void fill() {
    club.save(invented.many(40));
  }

  private SearchFixture open() throws InterruptedException {
    return SearchFixture.over(club, folder).settled();
  }

  private static void delete(Path root) throws IOException {
    try (Stream<Path> all = Files.walk(root)) {
      for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(path);
      }
    }
  }

  @Test
  void aNewReportIsFoundWithoutAskingForIt() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      club.save(ReportMaker.report().of("slate").saying("zanzibar").make());
      SearchFixture.eventually(() -> fixture.search("zanzibar").totalReports() == 1);
    }
  }

  @Test
  void onesOwnReportIsFoundAtOnceEvenBeforeItsChangeRow() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      ReportSnapshot report = ReportMaker.report().of("slate").saying("zanzibar").make();
      club.saveUnseen(report);
      assertTrue(fixture.index.awaitSeen(report.id()));
      assertEquals(1, fixture.search("zanzibar").totalReports());
    }
  }

  @Test
  void anEditReplacesAndAWithdrawalRemoves() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      ReportSnapshot report = club.all().get(0);
      club.save(ReportMaker.inState(report, EntryState.LIVE, report.version() + 1));
      fixture.settled();
      assertEquals(40, fixture.search(SearchQuery.everything()).totalReports());
      club.save(ReportMaker.inState(report, EntryState.WITHDRAWN, report.version() + 2));
      fixture.settled();
      assertEquals(39, fixture.search(SearchQuery.everything()).totalReports());
    }
  }

  @Test
  void aRestartGoesOnFromTheLastCommitAndReplaysDoNoHarm() throws InterruptedException {
    IndexHash before;
    try (SearchFixture fixture = open()) {
      before = fixture.index.hash();
    }
    club.all().forEach(club::save);
    try (SearchFixture fixture = open()) {
      assertEquals(before, fixture.index.hash());
      assertEquals(0, fixture.index.status().rebuilds());
    }
  }

  @Test
  void deletedWhileStoppedItIsRebuiltToTheSameContent() throws Exception {
    IndexHash before;
    try (SearchFixture fixture = open()) {
      before = fixture.index.hash();
    }
    delete(folder);
    try (SearchFixture fixture = open()) {
      assertEquals(before, fixture.index.hash());
      assertEquals(1, fixture.index.status().rebuilds());
    }
  }

  @Test
  void deletedWhileRunningItIsRebuiltWithoutARestart() throws Exception {
    try (SearchFixture fixture = open()) {
      delete(folder);
      club.save(invented.many(SearchLimits.CHANGES + 10));
      SearchFixture.eventually(() -> fixture.index.status().rebuilds() == 2);
      fixture.settled();
      assertTrue(Files.isDirectory(folder));
    }
  }

  @Test
  void oneFlippedByteIsNoticedAndCostsARebuild() throws Exception {
    try (SearchFixture fixture = open()) {
      fixture.index.hash();
    }
    Path largest;
    try (Stream<Path> files = Files.walk(folder)) {
      largest =
          files
              .filter(Files::isRegularFile)
              .max(Comparator.comparingLong(path -> path.toFile().length()))
              .orElseThrow();
    }
    byte[] bytes = Files.readAllBytes(largest);
    bytes[bytes.length / 2] ^= 1;
    Files.write(largest, bytes);
    try (SearchFixture fixture = open()) {
      assertEquals(1, fixture.index.status().rebuilds());
      assertEquals(40, fixture.search(SearchQuery.everything()).totalReports());
    }
  }

  @Test
  void anotherHistoryOfTheDatabaseMeansANewIndex() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      club.startNewEpoch();
      SearchFixture.eventually(() -> fixture.index.status().rebuilds() == 2);
      fixture.settled();
    }
  }

  @Test
  void aDatabaseThatWasPutBackIsNoticedThoughItsHistoryIsTheSame() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      fixture.index.hash();
    }
    club.putBack(3);
    club.save(invented.many(3));
    try (SearchFixture fixture = open()) {
      assertEquals(1, fixture.index.status().rebuilds());
      assertEquals(40, fixture.search(SearchQuery.everything()).totalReports());
    }
  }

  @Test
  void putBackWhileRunningItIsRebuiltOnce() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      club.putBack(3);
      fixture.settled();
      club.save(ReportMaker.report().of("slate").saying("zanzibar").make());
      SearchFixture.eventually(() -> fixture.search("zanzibar").totalReports() == 1);
      assertEquals(2, fixture.index.status().rebuilds());
      assertEquals(38, fixture.search(SearchQuery.everything()).totalReports());
    }
  }

  @Test
  void whereNoNewIndexDoesTheyComeWithGrowingPausesAndReadinessSaysSo()
      throws InterruptedException {
    try (SearchFixture fixture = open()) {
      club.restless();
      SearchFixture.eventually(() -> fixture.index.status().rebuilds() == 4);
      IndexStatus status = fixture.index.status();
      assertTrue(status.builds().pause().toMillis() > 2000, status::toString);
      assertEquals("another history", status.builds().why());
      club.calm();
      fixture.settled();
    }
  }

  @Test
  void anIndexBehindTheKeptRowsIsRebuilt() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      fixture.index.hash();
    }
    club.save(invented.many(5));
    club.trimAll();
    try (SearchFixture fixture = open()) {
      assertEquals(1, fixture.index.status().rebuilds());
      assertEquals(45, fixture.search(SearchQuery.everything()).totalReports());
    }
  }

  @Test
  void newWordsAreFindableWithoutAnyReportChanging() throws InterruptedException {
    club.save(ReportMaker.report().of("slate").make());
    try (SearchFixture fixture = open()) {
      assertEquals(0, fixture.search("frobnitz").totalReports());
      int before = fixture.search("slate").totalReports();
      fixture.vocabulary = withSynonym("slate", "frobnitz");
      SearchFixture.eventually(() -> fixture.search("frobnitz").totalReports() == before);
    }
  }

  private static Vocabulary withSynonym(String slug, String synonym) {
    List<Term> terms = new ArrayList<>();
    for (TermKind kind : TermKind.values()) {
      for (Term term : SearchFixture.WORDS.terms(kind)) {
        List<String> synonyms = new ArrayList<>(term.synonyms());
        if (term.slug().equals(slug)) {
          synonyms.add(synonym);
        }
        terms.add(
            new Term(
                kind,
                term.slug(),
                new Term.Words(term.label(), synonyms, term.note()),
                term.parent(),
                term.respondsAlike(),
                term.hex(),
                term.standing()));
      }
    }
    return new Vocabulary(terms, SearchFixture.WORDS.folding());
  }

  @Test
  void theComparisonWithTheDatabaseNoticesALostRowAndMendsIt() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      assertTrue(fixture.index.reconcile());
      club.saveUnseen(invented.next());
      assertFalse(fixture.index.reconcile());
      fixture.settled();
      assertEquals(1, fixture.index.status().drifts());
      assertTrue(fixture.index.reconcile());
    }
  }

  @Test
  void theHashTellsIdsAndVersionsApartButNotTheirOrder() {
    ReportSnapshot a = club.all().get(0);
    ReportSnapshot b = club.all().get(1);
    IndexHash ab = IndexHash.EMPTY.with(a.id(), 1).with(b.id(), 2);
    assertEquals(ab, IndexHash.EMPTY.with(b.id(), 2).with(a.id(), 1));
    assertNotEquals(ab, IndexHash.EMPTY.with(a.id(), 2).with(b.id(), 1));
  }

  @Test
  void searchesGoOnWhileTheDatabaseIsAwayAndItCatchesUpAfterwards() throws InterruptedException {
    try (SearchFixture fixture = open()) {
      club.goAway(new IllegalStateException("no connection (meant to happen in this test)"));
      SearchFixture.eventually(() -> fixture.index.status().lagSeconds() > 0.3);
      assertTrue(fixture.index.read(searcher -> searcher.getIndexReader().numDocs()) > 0);
      club.goAway(null);
      club.save(invented.next());
      fixture.settled();
    }
  }
}
