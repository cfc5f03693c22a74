package club.emberwell.listing;

import java.util.List;
import java.util.function.Function;

/**
 * One page of a list.
 *
 * @param page from 0, where it was asked for by number
 * @param next text of the cursor behind which the list goes on, null at its end
 */
public record Slice<T>(List<T> rows, int page, String next) {
  public Slice {
    rows = List.copyOf(rows);
  }

  /** Reads rows of a list. */
  @FunctionalInterface
  public interface Rows<T> {
    /** At most as many as the place says, in the order of the list. */
    List<T> read(Place place);
  }

  /**
   * Reads a page, and one row more to know whether another follows.
   *
   * @param keys what a row is ordered by, as {@link Place} gives it back to the statement
   * @throws PartRefused for a cursor of something else
   */
  public static <T> Slice<T> read(
      Part part, ListOrder order, Rows<T> rows, Function<? super T, List<?>> keys) {
    int most = part.rows(order);
    List<T> found = rows.read(Place.of(part, order));
    List<T> some = found.subList(0, Math.min(most, found.size()));
    boolean more = found.size() > most;
    String next =
        more ? Cursor.of(order.name(), keys.apply(some.get(some.size() - 1))).text() : null;
    return new Slice<>(some, part.page(), next);
  }

  /** Whether another page follows. */
  public boolean more() {
    return next != null;
  }

  public <R> Slice<R> map(Function<? super T, R> change) {
    return all(found -> found.stream().<R>map(change).toList());
  }

  /** Changes all rows at once, as where they are loaded by their ids. */
  public <R> Slice<R> all(Function<List<T>, List<R>> change) {
    return new Slice<>(change.apply(rows), page, next);
  }
}
