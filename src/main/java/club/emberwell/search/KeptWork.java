package club.emberwell.search;

import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Keeps what was worked out of recent searches for as long as the index stays the same. */
final class KeptWork {
  /**
   * @param part which of the things worked out of one search
   */
  private record Key(
      String text,
      Map<String, List<String>> facets,
      Map<String, SearchQuery.Limits> ranges,
      Class<?> type,
      Object part) {}

  private record Work(Object made, int trials) {}

  private final Map<Key, Work> kept = new LinkedHashMap<>(64, 0.75f, true);
  private Object generation;
  private int trials;

  private static Key key(SearchQuery query, Class<?> type, Object part) {
    return new Key(query.text(), query.facets(), query.ranges(), type, part);
  }

  /**
   * @param now names the state of the index
   */
  synchronized <T> Optional<T> get(Object now, SearchQuery query, Class<T> type, Object part) {
    Work found = now.equals(generation) ? kept.get(key(query, type, part)) : null;
    return Optional.ofNullable(found).map(work -> type.cast(work.made()));
  }

  /**
   * @param weight how many trials are held by it
   */
  synchronized <T> void put(
      Object now, SearchQuery query, Class<T> type, Object part, T made, int weight) {
    if (!now.equals(generation)) {
      kept.clear();
      trials = 0;
      generation = now;
    }
    if (weight > SearchLimits.KEPT_TRIALS) {
      return;
    }
    Work before = kept.put(key(query, type, part), new Work(made, weight));
    trials += weight - (before == null ? 0 : before.trials());
    Iterator<Work> eldest = kept.values().iterator();
    while (trials > SearchLimits.KEPT_TRIALS || kept.size() > SearchLimits.KEPT) {
      trials -= eldest.next().trials();
      eldest.remove();
    }
  }
}
