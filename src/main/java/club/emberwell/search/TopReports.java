package club.emberwell.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/** The best reports among trials that go by in index order. */
final class TopReports {
  /**
   * A report in the running.
   *
   * @param document any of its matching documents, over the whole index
   */
  record Entry(double key, long created, long report, int document) {}

  /** Worst first: lower key, then older, then the smaller number. */
  private static final Comparator<Entry> WORST_FIRST =
      Comparator.comparingDouble(Entry::key)
          .thenComparingLong(Entry::created)
          .thenComparingLong(Entry::report);

  private final int most;
  private final Entry after;
  private final PriorityQueue<Entry> best;
  private long report = Long.MIN_VALUE;
  private double key;
  private long created;
  private int document;
  private boolean open;

  /**
   * @param after of those behind it only, or null
   */
  TopReports(int most, Entry after) {
    this.most = most;
    this.after = after;
    this.best = new PriorityQueue<>(WORST_FIRST);
  }

  /** Answers true where a report begins. */
  boolean begins(long reportNumber) {
    return !open || reportNumber != report;
  }

  void begin(long reportNumber, double firstKey, long createdMillis, int inIndex) {
    close();
    report = reportNumber;
    key = firstKey;
    created = createdMillis;
    document = inIndex;
    open = true;
  }

  void also(double anotherKey) {
    key = Math.max(key, anotherKey);
  }

  private void close() {
    if (!open || most == 0) {
      return;
    }
    open = false;
    if (after != null
        && WORST_FIRST.compare(new Entry(key, created, report, document), after) >= 0) {
      return;
    }
    if (best.size() < most) {
      best.add(new Entry(key, created, report, document));
    } else if (beatsWorst()) {
      best.poll();
      best.add(new Entry(key, created, report, document));
    }
  }

  private boolean beatsWorst() {
    Entry worst = best.peek();
    if (key != worst.key()) {
      return key > worst.key();
    }
    if (created != worst.created()) {
      return created > worst.created();
    }
    return report > worst.report();
  }

  /** Best first; nothing can be added afterwards. */
  List<Entry> finish() {
    close();
    List<Entry> found = new ArrayList<>(best);
    found.sort(Collections.reverseOrder(WORST_FIRST));
    return found;
  }
}
