package club.emberwell.search.index;

/**
 * How this node's index is.
 *
 * @param ready whether searches are answered
 * @param rebuilding whether a new one is being built beside it
 * @param trials documents
 * @param lagSeconds since every known change was in it
 * @param rebuilds since the start
 * @param drifts times the nightly comparison found it different from the database
 */
public record IndexStatus(
    boolean ready, boolean rebuilding, int trials, double lagSeconds, int rebuilds, int drifts) {}
