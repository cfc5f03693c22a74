package club.emberwell.listing;

import java.util.List;
import java.util.function.Function;

/**
 * One page of a list.
 *
 * @param page from 0
 * @param more whether another page follows
 */
public record Slice<T>(List<T> rows, int page, boolean more) {
  /** The last page that is served. */
  public static final int LAST_PAGE = 1000;

  public Slice {
    rows = List.copyOf(rows);
  }

  /** Reads rows of a list from a place on, at most so many. */
  @FunctionalInterface
  public interface Rows<T> {
    List<T> read(int from, int most);
  }

  /**
   * Reads a page, and one row more to know whether another follows.
   *
   * @param page wanted; null and what is below 0 = the first
   */
  public static <T> Slice<T> read(Integer page, int size, Rows<T> rows) {
    int at = page == null ? 0 : Math.max(0, Math.min(page, LAST_PAGE));
    List<T> found = rows.read(at * size, size + 1);
    return new Slice<>(found.subList(0, Math.min(size, found.size())), at, found.size() > size);
  }

  public <R> Slice<R> map(Function<? super T, R> change) {
    return all(found -> found.stream().<R>map(change).toList());
  }

  /** Changes all rows at once, as where they are loaded by their ids. */
  public <R> Slice<R> all(Function<List<T>, List<R>> change) {
    return new Slice<>(change.apply(rows), page, more);
  }
}
