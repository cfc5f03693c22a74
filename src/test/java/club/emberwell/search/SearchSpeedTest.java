package club.emberwell.search;

import club.emberwell.entry.change.ChangeLog;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.search.index.IndexBuild;
import club.emberwell.search.index.IndexFolder;
import club.emberwell.search.index.SearchIndex;
import club.emberwell.search.query.SearchQuery;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.apache.lucene.store.FSDirectory;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Figures for an index of a million trials, printed and never asserted: {@code mvn test -Pbenchmark
 * -Dtest=SearchSpeedTest}. Loading the reports of a page from the database is left out, and so is
 * the kept-counts cache except where it is named.
 */
@Tag("benchmark")
class SearchSpeedTest {
  private static final int TRIALS = Integer.getInteger("emberwell.benchmark.trials", 1_000_000);
  private static final int ROUNDS = 15;

  @TempDir Path folder;

  /** Invents reports as they are asked for and keeps none. */
  private static final class Endless implements ReportSource {
    private final InventedReports invented = new InventedReports(1);
    private int trials;

    @Override
    public List<ReportSnapshot> byIds(Collection<UUID> ids) {
      return List.of();
    }

    @Override
    public List<ReportSnapshot> liveAfter(long after, int most) {
      if (trials >= TRIALS) {
        return List.of();
      }
      List<ReportSnapshot> batch = invented.many(most);
      trials += batch.stream().mapToInt(report -> report.trials().size()).sum();
      return batch;
    }
  }

  @Test
  void aMillionTrials() throws Exception {
    Endless source = new Endless();
    ChangeLog quiet = new FakeClub();
    IndexFolder home = new IndexFolder(folder, FSDirectory::open);
    long start = System.nanoTime();
    IndexBuild.run(home, quiet, source, SearchFixture.WORDS, () -> false).close();
    System.out.printf(
        "built %d trials in %.1f s, %.0f MB%n",
        source.trials, (System.nanoTime() - start) / 1e9, megabytes());
    SearchIndex index =
        new SearchIndex(home, quiet, source, () -> SearchFixture.WORDS, SearchFixture.pause());
    index.start();
    SearchFixture.eventually(() -> index.status().ready());
    try {
      queries().forEach((name, query) -> time(index, source, name, query));
    } finally {
      index.stop();
    }
  }

  private double megabytes() throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.mapToLong(file -> file.toFile().length()).sum() / 1e6;
    }
  }

  private static Map<String, SearchQuery> queries() {
    SearchQuery all = SearchQuery.everything();
    SearchQuery steel = all.withFacet("material", List.of("stainless-steel"));
    Map<String, SearchQuery> queries = new LinkedHashMap<>();
    queries.put("everything", all);
    queries.put("one material branch", steel);
    queries.put(
        "three facets",
        steel.withFacet("source", List.of("fibre")).withFacet("colour", List.of("black")));
    queries.put("two words", all.withText("black stainless"));
    queries.put("a range", all.withRange("speed", new SearchQuery.Limits(100.0, 200.0)));
    queries.put("one member", all.withFacet("member", List.of("member7")));
    return queries;
  }

  private static void time(SearchIndex index, ReportSource source, String name, SearchQuery query) {
    double[] cold = new double[ROUNDS];
    double[] kept = new double[ROUNDS];
    double[] columns = new double[ROUNDS];
    int size = 0;
    for (int i = 0; i < ROUNDS; i++) {
      SearchService fresh = new SearchService(index, source, (id, actor) -> Optional.empty());
      cold[i] = milliseconds(() -> fresh.search(query, SearchFixture.STRANGER));
      kept[i] = milliseconds(() -> fresh.search(query, SearchFixture.STRANGER));
      columns[i] = milliseconds(() -> fresh.columns(query));
      size = fresh.columns(query).size();
    }
    System.out.printf(
        "%-20s %7d trials: page with facets %6.1f ms, again %6.1f ms, columns %6.1f ms (medians)%n",
        name, size, median(cold), median(kept), median(columns));
  }

  // Time of the processor, not of the clock: everything happens in this thread, and other
  // programs on the machine do not count.
  private static double milliseconds(Runnable work) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long start = threads.getCurrentThreadCpuTime();
    work.run();
    return (threads.getCurrentThreadCpuTime() - start) / 1e6;
  }

  private static double median(double[] values) {
    Arrays.sort(values);
    return values[values.length / 2];
  }
}
