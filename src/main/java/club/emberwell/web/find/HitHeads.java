package club.emberwell.web.find;

import club.emberwell.search.query.Order;
import java.util.function.Function;

/** The heads of a table of reports by which it can be put in order. */
public record HitHeads(Head result, Head dose, Head posted) {
  /**
   * One head.
   *
   * @param href the same list in its order
   * @param sort what {@code aria-sort} says of the order it has; null where it is by something else
   */
  public record Head(String href, String sort) {}

  /**
   * @param now the order the list has
   * @param address of the same list in another
   */
  public static HitHeads of(Order now, Function<Order, String> address) {
    return new HitHeads(
        head(Order.QUALITY, "descending", now, address),
        head(Order.DOSE, "ascending", now, address),
        head(Order.NEWEST, "descending", now, address));
  }

  private static Head head(Order by, String sort, Order now, Function<Order, String> address) {
    return new Head(address.apply(by), by == now ? sort : null);
  }
}
