package club.emberwell.search;

import club.emberwell.listing.Cursor;
import club.emberwell.listing.ListOrder;
import club.emberwell.listing.Part;
import club.emberwell.listing.Place;
import club.emberwell.search.match.QueryParts;
import club.emberwell.search.query.Order;
import club.emberwell.search.query.SearchLimits;
import club.emberwell.search.query.SearchQuery;
import club.emberwell.search.query.SearchQueryCodec;
import java.io.IOException;
import java.util.List;
import java.util.UUID;
import org.apache.lucene.search.IndexSearcher;

/**
 * A place among the hits of one search, which outlives the state of the index it was made in: it
 * holds what the last hit was ordered by and not its document.
 */
final class HitCursor {
  private final ListOrder list;
  private final Order order;
  private final Place place;

  private HitCursor(ListOrder list, Order order, Place place) {
    this.list = list;
    this.order = order;
    this.place = place;
  }

  /**
   * @param cursor null = from the beginning
   */
  static HitCursor of(SearchQuery query, Order order, String cursor) {
    String search = SearchQueryCodec.write(query.withSize(SearchLimits.DEFAULT_SIZE));
    String name = "hits %s %x".formatted(order.code(), search.hashCode());
    ListOrder list = ListOrder.newestFirst(name, query.size());
    return new HitCursor(list, order, Place.of(Part.after(cursor, null), list));
  }

  /** The hit behind which to read, null at the beginning. */
  TopReports.Entry after(IndexSearcher searcher, QueryParts parts, HitOrder hits)
      throws IOException {
    if (place.atBeginning()) {
      return null;
    }
    TopReports.Entry then =
        new TopReports.Entry(
            Double.longBitsToDouble(place.number(0)), place.number(1), place.number(2), 0);
    UUID report = place.id(3);
    // how well words fit depends on all that is there: it is asked anew of the last hit
    return order == Order.RELEVANCE
        ? SearchPass.standing(searcher, parts, hits, report).orElse(then)
        : then;
  }

  /** The text of the place behind a hit. */
  String behind(TopReports.Entry hit, UUID report) {
    List<?> keys = List.of(Double.doubleToLongBits(hit.key()), hit.created(), hit.report(), report);
    return Cursor.of(list.name(), keys).text();
  }
}
