package club.emberwell.desk;

import java.util.List;
import java.util.function.Function;

/**
 * One page of a list.
 *
 * @param more whether another page follows
 */
public record Slice<T>(List<T> rows, int page, boolean more) {
  public Slice {
    rows = List.copyOf(rows);
  }

  /** From one row more than a page holds. */
  static <T> Slice<T> of(List<T> found, int page, int size) {
    boolean more = found.size() > size;
    return new Slice<>(more ? found.subList(0, size) : found, page, more);
  }

  public <R> Slice<R> map(Function<T, R> change) {
    return new Slice<>(rows.stream().map(change).toList(), page, more);
  }

  public int next() {
    return page + 1;
  }

  public int previous() {
    return page - 1;
  }

  public boolean empty() {
    return rows.isEmpty();
  }
}
