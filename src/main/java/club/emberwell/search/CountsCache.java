package club.emberwell.search;

import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.lucene.search.IndexSearcher;

/** Keeps facet counts of recent searches for as long as the index stays the same. */
final class CountsCache {
  private record Key(
      String text,
      Map<String, List<String>> facets,
      Map<String, SearchQuery.Limits> ranges,
      String vocabulary) {}

  private final Map<Key, FacetCounts> kept =
      new LinkedHashMap<>(64, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, FacetCounts> eldest) {
          return size() > SearchLimits.KEPT_COUNTS;
        }
      };

  private Object version;

  private static Key key(SearchQuery query, String vocabulary) {
    return new Key(query.text(), query.facets(), query.ranges(), vocabulary);
  }

  /** The counts, or null. */
  synchronized FacetCounts get(IndexSearcher searcher, SearchQuery query, String vocabulary) {
    return isCurrent(searcher) ? kept.get(key(query, vocabulary)) : null;
  }

  synchronized void put(
      IndexSearcher searcher, SearchQuery query, String vocabulary, FacetCounts counts) {
    if (!isCurrent(searcher)) {
      kept.clear();
      version = version(searcher);
    }
    kept.put(key(query, vocabulary), counts);
  }

  private boolean isCurrent(IndexSearcher searcher) {
    return version(searcher).equals(version);
  }

  private static Object version(IndexSearcher searcher) {
    return searcher.getIndexReader().getReaderCacheHelper().getKey();
  }
}
