package club.emberwell.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import club.emberwell.report.ReportSnapshot;
import club.emberwell.search.SearchResult.FacetList;
import club.emberwell.search.SearchResult.FacetValue;
import club.emberwell.search.SlowSearch.Trial;
import club.emberwell.search.column.TrialColumns;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Random reports and random queries against {@link SlowSearch}, which looks at everything. */
class SearchAgainstOracleTest {
  private static final long SEED = 20261125;
  private static final int QUERIES = 150;

  @TempDir static Path folder;
  private static SearchFixture fixture;
  private static SlowSearch oracle;

  @BeforeAll
  static void build() throws InterruptedException {
    InventedReports invented = new InventedReports(SEED);
    FakeClub club = new FakeClub();
    club.save(invented.many(300));
    fixture = SearchFixture.over(club, folder);
    fixture.settled();
    // the rest arrives while it runs, so that there are several segments and deleted documents
    List<ReportSnapshot> later = invented.many(200);
    for (List<ReportSnapshot> part : List.of(later.subList(0, 80), later.subList(80, 200))) {
      club.save(part);
      fixture.settled();
    }
    club.all().stream().limit(60).toList().forEach(club::save);
    club.all().stream().limit(20).toList().forEach(report -> club.remove(report.id()));
    fixture.settled();
    oracle = new SlowSearch(club.all());
  }

  @AfterAll
  static void stop() {
    fixture.close();
  }

  private static List<SearchQuery> queries() {
    Random random = new Random(SEED);
    List<SearchQuery> queries = new ArrayList<>();
    for (int i = 0; i < QUERIES; i++) {
      queries.add(query(random));
    }
    return queries;
  }

  private static SearchQuery query(Random random) {
    SearchQuery query = SearchQuery.everything().withSize(SearchLimits.SIZE);
    for (Facet facet : Facet.values()) {
      if (random.nextInt(5) == 0) {
        List<String> possible =
            List.copyOf(oracle.counts(SearchQuery.everything(), facet).keySet());
        List<String> chosen = new ArrayList<>();
        for (int i = 0; i <= random.nextInt(2); i++) {
          chosen.add(possible.get(random.nextInt(possible.size())));
        }
        query = query.withFacet(facet.code(), chosen);
      }
    }
    if (random.nextInt(4) == 0) {
      query =
          query.withRange(
              "speed", new SearchQuery.Limits(100.0, random.nextInt(2) == 0 ? null : 600.0));
    }
    if (random.nextInt(5) == 0) {
      query = query.withRange("thickness", new SearchQuery.Limits(null, 4.0));
    }
    return query;
  }

  @Test
  void totalsAreThoseOfLookingAtEverything() {
    for (SearchQuery query : queries()) {
      Set<Trial> expected = oracle.matching(query, null);
      SearchResult found = fixture.search(query);
      assertEquals(SlowSearch.reports(expected), found.totalReports(), query::toString);
      assertEquals(expected.size(), found.totalTrials(), query::toString);
    }
  }

  @Test
  void everyFacetCountsDistinctReportsAndIgnoresItsOwnChoice() {
    for (SearchQuery query : queries()) {
      for (FacetList list : fixture.search(query).facets()) {
        Map<String, Integer> found = new TreeMap<>();
        list.values().stream()
            .filter(value -> value.count() > 0)
            .forEach(value -> found.put(value.value(), value.count()));
        assertEquals(
            oracle.counts(query, list.facet()), found, () -> list.facet() + " of " + query);
      }
    }
  }

  @Test
  void aChosenValueStaysInItsListEvenWhereNothingHasIt() {
    for (SearchQuery query : queries()) {
      for (FacetList list : fixture.search(query).facets()) {
        List<String> selected =
            list.values().stream()
                .filter(FacetValue::selected)
                .map(FacetValue::value)
                .sorted()
                .toList();
        assertEquals(query.facets().getOrDefault(list.facet().code(), List.of()), selected);
      }
    }
  }

  @Test
  void hitsAreReportsWithExactlyTheirMatchingTrials() {
    for (SearchQuery query : queries()) {
      Set<Trial> expected = oracle.matching(query, null);
      for (SearchResult.Hit hit : fixture.search(query).hits()) {
        List<Integer> positions =
            expected.stream()
                .filter(trial -> trial.report().equals(hit.report()))
                .map(Trial::position)
                .sorted()
                .toList();
        assertEquals(positions, hit.trials().stream().sorted().toList());
      }
    }
  }

  @Test
  void pagesInEveryOrderGiveEachReportOnce() {
    for (Order order : List.of(Order.NEWEST, Order.QUALITY)) {
      SearchQuery query = SearchQuery.everything().withSize(37).withSort(order.code());
      List<ReportSnapshot> seen = new ArrayList<>();
      SearchResult page = fixture.search(query);
      for (int number = 0; number < page.pages(); number++) {
        fixture.search(query.withPage(number)).hits().forEach(hit -> seen.add(hit.report()));
      }
      Set<Trial> all = oracle.matching(query, null);
      Comparator<ReportSnapshot> expected =
          order == Order.NEWEST
              ? Comparator.comparing(ReportSnapshot::createdAt).reversed()
              : Comparator.comparingInt((ReportSnapshot r) -> -SlowSearch.quality(all, r));
      assertEquals(SlowSearch.reports(all), seen.stream().distinct().count());
      assertEquals(seen.stream().sorted(expected).toList(), seen);
    }
  }

  @Test
  void columnsHoldEveryMatchingTrialExactly() {
    for (SearchQuery query : queries()) {
      TrialColumns columns = fixture.service.columns(query);
      List<String> found = new ArrayList<>();
      for (int i = 0; i < columns.size(); i++) {
        found.add(ColumnText.of(columns, i));
      }
      List<String> expected =
          oracle.matching(query, null).stream().map(ColumnText::of).sorted().toList();
      assertEquals(expected, found.stream().sorted().toList());
    }
  }

  @Test
  void anOpenFacetSaysHowManyValuesItLeavesOut() {
    FacetList members =
        fixture.search(SearchQuery.everything()).facets().get(Facet.MEMBER.ordinal());
    assertEquals(30, members.values().size() + members.more());
    assertTrue(members.values().get(0).count() >= members.values().get(1).count());
  }
}
