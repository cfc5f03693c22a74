package club.emberwell.search;

import club.emberwell.laser.Effect;
import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.reading.TrialSnapshot;
import club.emberwell.search.column.Columns;
import club.emberwell.search.column.Documents;
import club.emberwell.search.match.QueryParts;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.ReaderUtil;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.TermInSetQuery;
import org.apache.lucene.util.BytesRef;

/** Finds out which reports a page shows and which of their trials match. */
final class PageHits {
  private PageHits() {}

  /** Ids of the page's reports in order, each with the positions of its matching trials. */
  static Map<UUID, List<Integer>> of(
      IndexSearcher searcher, QueryParts parts, List<TopReports.Entry> page) throws IOException {
    Map<UUID, List<Integer>> found = new LinkedHashMap<>();
    List<LeafReaderContext> leaves = searcher.getIndexReader().leaves();
    for (TopReports.Entry entry : page) {
      LeafReaderContext leaf = leaves.get(ReaderUtil.subIndex(entry.document(), leaves));
      found.put(Documents.id(leaf.reader(), entry.document() - leaf.docBase), new ArrayList<>());
    }
    if (!found.isEmpty()) {
      addTrials(searcher, parts, found);
    }
    return found;
  }

  private static void addTrials(
      IndexSearcher searcher, QueryParts parts, Map<UUID, List<Integer>> found) throws IOException {
    List<BytesRef> ids = found.keySet().stream().map(id -> new BytesRef(id.toString())).toList();
    Query query =
        new BooleanQuery.Builder()
            .add(parts.matching(), Occur.FILTER)
            .add(new TermInSetQuery(Columns.ID, ids), Occur.FILTER)
            .build();
    Documents.matching(
        searcher,
        query,
        (leaf, documents) -> {
          NumericDocValues trials = DocValues.getNumeric(leaf, Columns.TRIAL);
          for (int document : documents) {
            int trial = (int) Documents.number(trials, document);
            found.get(Documents.id(leaf, document)).add(trial);
          }
        });
  }

  /** The hits in order; a report that is gone since is left out. */
  static List<SearchResult.Hit> withReports(
      Map<UUID, List<Integer>> found, Collection<ReportSnapshot> reports) {
    Map<UUID, ReportSnapshot> byId = new HashMap<>();
    reports.forEach(report -> byId.put(report.id(), report));
    List<SearchResult.Hit> hits = new ArrayList<>();
    found.forEach(
        (id, trials) -> {
          ReportSnapshot report = byId.get(id);
          if (report != null) {
            hits.add(new SearchResult.Hit(report, bestFirst(report, trials)));
          }
        });
    return List.copyOf(hits);
  }

  private static List<Integer> bestFirst(ReportSnapshot report, List<Integer> positions) {
    Comparator<Integer> best =
        Comparator.comparingInt(position -> -rank(report.trials().get(position)));
    return positions.stream()
        .filter(position -> position < report.trials().size())
        .sorted(best.thenComparing(Comparator.naturalOrder()))
        .toList();
  }

  private static int rank(TrialSnapshot trial) {
    if (trial.effect() != Effect.RIGHT) {
      return 0;
    }
    return 1 + (trial.quality() == null ? 0 : trial.quality());
  }
}
