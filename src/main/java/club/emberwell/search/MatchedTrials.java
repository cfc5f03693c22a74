package club.emberwell.search;

import club.emberwell.search.column.Columns;
import club.emberwell.search.column.Documents;
import java.io.IOException;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.lucene.index.DocValues;
import org.apache.lucene.index.NumericDocValues;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;

/**
 * Every trial a search meets, or as many of them as are wanted.
 *
 * @param total how many there are
 * @param places of the trials, by the number of their report
 */
public record MatchedTrials(int total, SortedMap<Long, Set<Integer>> places) {
  static MatchedTrials read(IndexSearcher searcher, Query query, int most) throws IOException {
    SortedMap<Long, Set<Integer>> places = new TreeMap<>();
    int[] seen = {0};
    Documents.matching(
        searcher,
        query,
        (leaf, documents) -> {
          NumericDocValues reports = DocValues.getNumeric(leaf, Columns.REPORT);
          NumericDocValues trials = DocValues.getNumeric(leaf, Columns.TRIAL);
          for (int document : documents) {
            if (seen[0]++ < most) {
              places
                  .computeIfAbsent(Documents.number(reports, document), r -> new TreeSet<>())
                  .add((int) Documents.number(trials, document));
            }
          }
        });
    return new MatchedTrials(seen[0], places);
  }

  /** How many of them are here. */
  public int here() {
    return places.values().stream().mapToInt(Set::size).sum();
  }
}
