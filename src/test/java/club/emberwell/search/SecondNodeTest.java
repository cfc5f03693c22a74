package club.emberwell.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.access.People;
import club.emberwell.access.People.Person;
import club.emberwell.catalog.store.CatalogService;
import club.emberwell.entry.change.ChangeLog;
import club.emberwell.report.ReportSource;
import club.emberwell.search.index.IndexFolder;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.search.query.SearchQuery;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.apache.lucene.store.FSDirectory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Another node on the same database: it hears of a report only through the change rows. */
@QuarkusTest
class SecondNodeTest {
  private static final double PROMISE_SECONDS = 2;

  @TempDir Path folder;
  @Inject ChangeLog log;
  @Inject ReportSource source;
  @Inject CatalogService catalog;
  @Inject SearchIndex first;

  private static UUID post(Person person, String effect) {
    Map<String, Object> laser =
        Map.of(
            "source", "diode",
            "wavelength", "450 nm",
            "ratedPower", "10 W",
            "motion", "gantry",
            "regime", "cw");
    Map<String, Object> body =
        Map.of(
            "laser",
            laser,
            "material",
            "slate",
            "process",
            "surface-engraving",
            "settings",
            Map.of("power", "80 %", "speed", "50 mm/s", "lineSpacing", "0.1 mm"),
            "effect",
            effect);
    String id =
        person
            .asks()
            .header("Idempotency-Key", UUID.randomUUID().toString())
            .body(body)
            .post("/api/v1/reports")
            .then()
            .statusCode(201)
            .extract()
            .path("id");
    return UUID.fromString(id);
  }

  @Test
  void findsAReportPostedOnTheFirstWithinTwoSeconds() throws InterruptedException {
    Person ada = People.join();
    post(ada, "right");
    SearchIndex second =
        new SearchIndex(
            new IndexFolder(folder, FSDirectory::open),
            log,
            source,
            catalog::vocabulary,
            SearchFixture.pause());
    second.start();
    try {
      SearchFixture.eventually(() -> second.status().ready());
      SearchService service = new SearchService(second, source, (id, who) -> Optional.empty());
      SearchQuery hers = SearchQuery.everything().withFacet("member", List.of(ada.handle()));
      assertEquals(1, service.search(hers, SearchFixture.STRANGER).totalReports());
      for (int round = 2; round <= 6; round++) {
        int expected = round;
        post(ada, round % 2 == 0 ? "too-little" : "right");
        long posted = System.nanoTime();
        SearchFixture.eventually(
            () -> service.search(hers, SearchFixture.STRANGER).totalReports() == expected);
        double seconds = (System.nanoTime() - posted) / 1e9;
        assertTrue(seconds < PROMISE_SECONDS, () -> "took " + seconds + " s");
      }
      assertEquals(first.hash(), second.hash());
    } finally {
      second.stop();
    }
  }
}
