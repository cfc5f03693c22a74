package club.emberwell.access.traffic;

import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.concurrent.atomic.AtomicInteger;

/** How many of something each address has at this moment, and whether it may have one more. */
final class PerAddress {
  private final ConcurrentMap<String, Integer> counts = new ConcurrentHashMap<>();
  private final AtomicInteger all = new AtomicInteger();
  private final int mostOfOne;
  private final int mostOfAll;

  PerAddress(int mostOfOne, int mostOfAll) {
    this.mostOfOne = mostOfOne;
    this.mostOfAll = mostOfAll;
  }

  /** Counts one more, to be let go by {@link #leave}; false where there is no room. */
  boolean enter(String address) {
    if (all.incrementAndGet() > mostOfAll) {
      all.decrementAndGet();
      return false;
    }
    if (counts.merge(address, 1, Integer::sum) > mostOfOne) {
      leave(address);
      return false;
    }
    return true;
  }

  void leave(String address) {
    counts.computeIfPresent(address, (a, count) -> count > 1 ? count - 1 : null);
    all.decrementAndGet();
  }
}
