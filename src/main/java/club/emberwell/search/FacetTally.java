package club.emberwell.search;

import club.emberwell.search.query.Facet;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.LeafReader;
import org.apache.lucene.index.SortedDocValues;
import org.apache.lucene.util.BytesRef;
import org.apache.lucene.util.FixedBitSet;

/**
 * Counts the reports of one facet's values while trials go by in index order. A report counts once
 * for a value however many of its trials have it.
 */
final class FacetTally {
  private final Facet facet;
  private final Set<String> chosen;
  private final Map<String, Integer> counts = new HashMap<>();
  private SortedDocValues values;
  private FixedBitSet chosenHere;
  private int[] countsHere = new int[0];
  private long report = Long.MIN_VALUE;
  private long seen;
  private int reports;

  /**
   * @param chosen index values chosen in this facet; empty = no choice
   */
  FacetTally(Facet facet, Set<String> chosen) {
    this.facet = facet;
    this.chosen = chosen;
  }

  boolean narrows() {
    return !chosen.isEmpty();
  }

  void enter(LeafReader leaf) throws IOException {
    values = DocValues.getSorted(leaf, facet.field());
    countsHere = new int[values.getValueCount()];
    chosenHere = new FixedBitSet(Math.max(1, values.getValueCount()));
    for (String value : chosen) {
      int ordinal = values.lookupTerm(new BytesRef(value));
      if (ordinal >= 0) {
        chosenHere.set(ordinal);
      }
    }
  }

  boolean accepts(int document) throws IOException {
    return values.advanceExact(document) && chosenHere.get(values.ordValue());
  }

  void count(int document, long reportNumber) throws IOException {
    if (reportNumber != report) {
      report = reportNumber;
      seen = 0;
      reports++;
    } else if (!facet.ofTrial()) {
      return;
    }
    if (!values.advanceExact(document)) {
      return;
    }
    int ordinal = values.ordValue();
    if (facet.ofTrial()) {
      // a facet of trials has a handful of values, so a long remembers those of this report
      long bit = 1L << ordinal;
      if ((seen & bit) != 0) {
        return;
      }
      seen |= bit;
    }
    countsHere[ordinal]++;
  }

  void leave() throws IOException {
    for (int ordinal = 0; ordinal < countsHere.length; ordinal++) {
      if (countsHere[ordinal] > 0) {
        counts.merge(values.lookupOrd(ordinal).utf8ToString(), countsHere[ordinal], Integer::sum);
      }
    }
  }

  Facet facet() {
    return facet;
  }

  Map<String, Integer> counts() {
    return counts;
  }

  /** Reports seen, whatever their value. */
  int reports() {
    return reports;
  }
}
