package club.emberwell.search.query;

import club.emberwell.remark.Coded;

/** In what order hits come; equal ones newest first. */
public enum Order implements Coded {
  /** How well the words fit; the order where there is a text. */
  RELEVANCE("relevance", "Best match"),
  /** The order where nothing else is asked. */
  NEWEST("newest", "Newest"),
  /** {@link Closeness} to a machine; the order where a machine is named. */
  NEAR("near", "Closest to my machine"),
  /** Best rated results that came out right. */
  QUALITY("quality", "Best result"),
  /** By nominal dose; trials without one come last. */
  DOSE("dose", "Lowest dose");

  private final String code;
  private final String label;

  Order(String code, String label) {
    this.code = code;
    this.label = label;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** The order of a query that asks for none, or for one that needs what it lacks. */
  public static Order usual(SearchQuery query) {
    if (query.near() != null) {
      return NEAR;
    }
    return query.text().isBlank() ? NEWEST : RELEVANCE;
  }

  /** The order in which a query's hits come. */
  public static Order effective(SearchQuery query) {
    Order asked = Coded.of(Order.class, query.sort()).orElseGet(() -> usual(query));
    boolean lacking =
        asked == NEAR && query.near() == null || asked == RELEVANCE && query.text().isBlank();
    return lacking ? usual(query) : asked;
  }
}
