package club.emberwell.search.index;

import club.emberwell.report.ReportSnapshot;
import club.emberwell.report.ReportSource;
import club.emberwell.search.column.Columns;
import club.emberwell.search.query.SearchLimits;
import java.io.IOException;
import java.util.Iterator;
import java.util.UUID;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.util.Bits;

/**
 * Which reports in which versions an index or the database holds, as one number: the same content
 * in any order gives the same hash.
 *
 * @param reports how many
 * @param hash XOR over a mix of each report's id and version
 */
public record IndexHash(long reports, long hash) {
  public static final IndexHash EMPTY = new IndexHash(0, 0);

  public IndexHash with(UUID id, long version) {
    return with(id.getMostSignificantBits(), id.getLeastSignificantBits(), version);
  }

  private IndexHash with(long high, long low, long version) {
    return new IndexHash(reports + 1, hash ^ mix(mix(mix(high) ^ low) ^ version));
  }

  // The finaliser of SplitMix64: every input bit changes every output bit about half the time.
  private static long mix(long value) {
    long z = value + 0x9E3779B97F4A7C15L;
    z = (z ^ z >>> 30) * 0xBF58476D1CE4E5B9L;
    z = (z ^ z >>> 27) * 0x94D049BB133111EBL;
    return z ^ z >>> 31;
  }

  /** Of everything that should be found. */
  public static IndexHash of(ReportSource source) {
    IndexHash hash = EMPTY;
    for (Iterator<ReportSnapshot> all = source.live(SearchLimits.BATCH).iterator();
        all.hasNext(); ) {
      ReportSnapshot report = all.next();
      if (!report.trials().isEmpty()) {
        hash = hash.with(report.id(), report.version());
      }
    }
    return hash;
  }

  /** Of everything that is found. */
  static IndexHash of(IndexSearcher searcher) throws IOException {
    IndexHash hash = EMPTY;
    for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
      hash = addLeaf(hash, leaf.reader());
    }
    return hash;
  }

  private static IndexHash addLeaf(IndexHash before, LeafReader leaf) throws IOException {
    NumericDocValues numbers = DocValues.getNumeric(leaf, Columns.REPORT);
    NumericDocValues high = DocValues.getNumeric(leaf, Columns.ID_HIGH);
    NumericDocValues low = DocValues.getNumeric(leaf, Columns.ID_LOW);
    NumericDocValues versions = DocValues.getNumeric(leaf, Columns.VERSION);
    Bits live = leaf.getLiveDocs();
    IndexHash hash = before;
    long last = Long.MIN_VALUE;
    for (int document = 0; document < leaf.maxDoc(); document++) {
      if (live != null && !live.get(document) || !numbers.advanceExact(document)) {
        continue;
      }
      if (numbers.longValue() != last
          && high.advanceExact(document)
          && low.advanceExact(document)
          && versions.advanceExact(document)) {
        last = numbers.longValue();
        hash = hash.with(high.longValue(), low.longValue(), versions.longValue());
      }
    }
    return hash;
  }
}
