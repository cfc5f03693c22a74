package club.emberwell.listing;

/**
 * How a list is ordered: by keys that do not change while a row stands in it, the last of them
 * unlike in any two rows.
 *
 * @param name of the list, short, as it stands in its cursors
 * @param falling whether all keys fall, newest first, or all rise
 * @param size rows on a page
 */
public record ListOrder(String name, boolean falling, int size) {
  public static ListOrder newestFirst(String name, int size) {
    return new ListOrder(name, true, size);
  }

  public static ListOrder oldestFirst(String name, int size) {
    return new ListOrder(name, false, size);
  }
}
