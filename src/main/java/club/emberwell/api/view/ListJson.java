package club.emberwell.api.view;

import club.emberwell.listing.Slice;
import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * A list, or one page of it.
 *
 * @param next where the next page begins; left out at the end
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ListJson<T>(List<T> items, @Nullable String next) {
  public ListJson {
    items = List.copyOf(items);
  }

  /** A whole list. */
  public static <T> ListJson<T> of(List<T> items) {
    return new ListJson<>(items, null);
  }

  /** A page of a list. */
  public static <T> ListJson<T> of(Slice<T> page) {
    return new ListJson<>(page.rows(), page.next());
  }

  /** A page of a list, each row as it is answered. */
  public static <R, T> ListJson<T> of(Slice<R> page, Function<R, T> json) {
    return of(page.map(json));
  }
}
