package club.emberwell.search;

import club.emberwell.search.column.Columns;
import club.emberwell.search.match.QueryParts;
import club.emberwell.search.query.Facet;
import club.emberwell.search.query.Order;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.index.Term;
import org.apache.lucene.search.BooleanClause.Occur;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BulkScorer;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.LeafCollector;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.Scorable;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.TermQuery;
import org.apache.lucene.search.Weight;

/**
 * One pass over the candidates of a search: totals, the best reports, and the counts of all facets,
 * each without its own choice. The cost is one look at a facet's values for each report, and for
 * each trial where a choice or the facet depends on the trial.
 */
final class SearchPass implements LeafCollector {
  private final List<FacetTally> all = new ArrayList<>();
  private final List<FacetTally> narrowing = new ArrayList<>();
  private final HitOrder order;
  private final TopReports top;
  private NumericDocValues reports;
  private int base;
  private int reportCount;
  private int trialCount;

  private SearchPass(QueryParts parts, Wanted wanted, boolean counting) {
    this.order = wanted.order();
    this.top = new TopReports(wanted.most(), wanted.after());
    if (counting) {
      for (Facet facet : Facet.values()) {
        all.add(new FacetTally(facet, parts.chosen().getOrDefault(facet, Set.of())));
      }
      all.stream().filter(FacetTally::narrows).forEach(narrowing::add);
    }
  }

  /**
   * Which hits are wanted.
   *
   * @param after those behind it only, or null
   */
  record Wanted(HitOrder order, int most, TopReports.Entry after) {}

  /**
   * What a pass found.
   *
   * @param counts null where they were not asked for
   */
  record Found(FacetCounts counts, List<TopReports.Entry> best) {}

  /** Hits and counts. */
  static Found full(IndexSearcher searcher, QueryParts parts, Wanted wanted) throws IOException {
    SearchPass pass = new SearchPass(parts, wanted, true);
    pass.run(searcher, parts.candidates());
    return new Found(pass.counts(), pass.top.finish());
  }

  /** Hits only, where the counts are known already. */
  static Found hits(IndexSearcher searcher, QueryParts parts, Wanted wanted) throws IOException {
    return hits(searcher, parts, parts.matching(), wanted);
  }

  private static Found hits(IndexSearcher searcher, QueryParts parts, Query among, Wanted wanted)
      throws IOException {
    SearchPass pass = new SearchPass(parts, wanted, false);
    pass.run(searcher, among);
    return new Found(null, pass.top.finish());
  }

  /** Where one report stands now; empty where it is not met any more. */
  static Optional<TopReports.Entry> standing(
      IndexSearcher searcher, QueryParts parts, HitOrder order, UUID report) throws IOException {
    Query one =
        new BooleanQuery.Builder()
            .add(parts.matching(), Occur.MUST)
            .add(new TermQuery(new Term(Columns.ID, report.toString())), Occur.FILTER)
            .build();
    return hits(searcher, parts, one, new Wanted(order, 1, null)).best().stream().findFirst();
  }

  /** How many reports match. */
  static int count(IndexSearcher searcher, QueryParts parts) throws IOException {
    SearchPass pass =
        new SearchPass(parts, new Wanted(new HitOrder(Order.NEWEST, null), 0, null), false);
    pass.run(searcher, parts.matching());
    return pass.reportCount;
  }

  private void run(IndexSearcher searcher, Query query) throws IOException {
    ScoreMode mode = order.needsScores() ? ScoreMode.COMPLETE : ScoreMode.COMPLETE_NO_SCORES;
    Weight weight = searcher.createWeight(searcher.rewrite(query), mode, 1);
    for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
      BulkScorer scorer = weight.bulkScorer(leaf);
      if (scorer == null) {
        continue;
      }
      enter(leaf);
      scorer.score(this, leaf.reader().getLiveDocs(), 0, DocIdSetIterator.NO_MORE_DOCS);
      for (FacetTally tally : all) {
        tally.leave();
      }
    }
  }

  private void enter(LeafReaderContext leaf) throws IOException {
    base = leaf.docBase;
    reports = DocValues.getNumeric(leaf.reader(), Columns.REPORT);
    order.enter(leaf.reader());
    for (FacetTally tally : all) {
      tally.enter(leaf.reader());
    }
  }

  @Override
  public void setScorer(Scorable scorer) {
    order.scoredBy(scorer);
  }

  @Override
  public void collect(int document) throws IOException {
    if (!reports.advanceExact(document)) {
      return;
    }
    long report = reports.longValue();
    FacetTally missed = null;
    for (FacetTally tally : narrowing) {
      if (!tally.accepts(document)) {
        if (missed != null) {
          return;
        }
        missed = tally;
      }
    }
    if (missed != null) {
      missed.count(document, report);
      return;
    }
    hit(document, report);
    for (FacetTally tally : all) {
      tally.count(document, report);
    }
  }

  private void hit(int document, long report) throws IOException {
    trialCount++;
    double key = order.key(document);
    if (top.begins(report)) {
      reportCount++;
      top.begin(report, key, order.created(document), base + document);
    } else {
      top.also(key);
    }
  }

  private FacetCounts counts() {
    Map<Facet, Map<String, Integer>> byFacet = new EnumMap<>(Facet.class);
    Map<Facet, Integer> without = new EnumMap<>(Facet.class);
    for (FacetTally tally : all) {
      byFacet.put(tally.facet(), tally.counts());
      without.put(tally.facet(), tally.reports());
    }
    return new FacetCounts(reportCount, trialCount, byFacet, without);
  }
}
