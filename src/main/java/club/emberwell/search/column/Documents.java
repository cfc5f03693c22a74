package club.emberwell.search.column;

import java.io.IOException;
import java.util.Arrays;
import java.util.UUID;
import java.util.function.Consumer;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.NumericDocValuesField;
import org.apache.lucene.document.StringField;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.IndexableField;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.LeafReaderContext;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.search.DocIdSetIterator;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreMode;
import org.apache.lucene.search.Scorer;
import org.apache.lucene.search.Weight;
import org.apache.lucene.util.Bits;
import org.apache.lucene.util.IntsRefBuilder;

/** What all documents share: whose they are, and how their numbers and matches are read. */
public final class Documents {
  private Documents() {}

  /** Takes the matches of one segment. */
  public interface Segment {
    void take(LeafReader leaf, int[] documents) throws IOException;
  }

  /** Adds the fields by which a document is found, replaced and led back to its entry. */
  public static void identify(UUID id, Consumer<IndexableField> fields) {
    fields.accept(new StringField(Columns.ID, id.toString(), Field.Store.NO));
    fields.accept(new NumericDocValuesField(Columns.ID_HIGH, id.getMostSignificantBits()));
    fields.accept(new NumericDocValuesField(Columns.ID_LOW, id.getLeastSignificantBits()));
  }

  /** Whose document it is. */
  public static UUID id(LeafReader leaf, int document) throws IOException {
    return new UUID(
        number(DocValues.getNumeric(leaf, Columns.ID_HIGH), document),
        number(DocValues.getNumeric(leaf, Columns.ID_LOW), document));
  }

  /** A number, 0 where there is none; documents are asked for in ascending order. */
  public static long number(NumericDocValues values, int document) throws IOException {
    return values.advanceExact(document) ? values.longValue() : 0;
  }

  /** A double kept as its bits, NaN where there is none. */
  public static double real(NumericDocValues values, int document) throws IOException {
    return values.advanceExact(document) ? Double.longBitsToDouble(values.longValue()) : Double.NaN;
  }

  /** Hands over what a query matches, segment by segment, without scores. */
  public static void matching(IndexSearcher searcher, Query query, Segment segment)
      throws IOException {
    Weight weight = searcher.createWeight(searcher.rewrite(query), ScoreMode.COMPLETE_NO_SCORES, 1);
    for (LeafReaderContext leaf : searcher.getIndexReader().leaves()) {
      Scorer scorer = weight.scorer(leaf);
      if (scorer == null) {
        continue;
      }
      Bits live = leaf.reader().getLiveDocs();
      IntsRefBuilder found = new IntsRefBuilder();
      DocIdSetIterator each = scorer.iterator();
      for (int d = each.nextDoc(); d != DocIdSetIterator.NO_MORE_DOCS; d = each.nextDoc()) {
        if (live == null || live.get(d)) {
          found.append(d);
        }
      }
      segment.take(leaf.reader(), Arrays.copyOf(found.ints(), found.length()));
    }
  }
}
