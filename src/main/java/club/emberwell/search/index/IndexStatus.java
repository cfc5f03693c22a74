package club.emberwell.search.index;

import java.time.Duration;

/**
 * How this node's index is.
 *
 * @param ready whether searches are answered
 * @param builds of new ones beside it
 * @param trials documents
 * @param lagSeconds since every known change was in it
 * @param rebuilds since the start
 * @param drifts times the nightly comparison found it different from the database
 */
public record IndexStatus(
    boolean ready, Builds builds, int trials, double lagSeconds, int rebuilds, int drifts) {

  /**
   * How new ones come.
   *
   * @param running whether one is being built
   * @param why the last one was begun
   * @param pause until another one may be begun: it grows where they come again and again
   */
  public record Builds(boolean running, String why, Duration pause) {}
}
