package club.emberwell.listing;

/**
 * Which part of a list is wanted: a page by its number, as people leaf, or what follows a cursor,
 * as programs read.
 *
 * @param page from 0, of those by number
 * @param cursor text of the place behind which to read, null for the beginning
 * @param size rows, null for as many as the list has on a page
 * @param byCursor whether a program reads
 */
public record Part(int page, String cursor, Integer size, boolean byCursor) {
  /** The last page that is served by number. */
  public static final int LAST_PAGE = 1000;

  /** The most rows that are served at once. */
  public static final int SIZE_MAX = 100;

  /** The first page. */
  public static final Part FIRST = page(0);

  /**
   * @param number null and what is below 0 = the first
   */
  public static Part page(Integer number) {
    int page = number == null ? 0 : Math.max(0, Math.min(number, LAST_PAGE));
    return new Part(page, null, null, false);
  }

  /**
   * @param cursor null or blank = from the beginning
   * @param size 1 to {@link #SIZE_MAX}, null or blank = as the list has it
   * @throws PartRefused for any other size
   */
  public static Part after(String cursor, String size) {
    String from = cursor == null || cursor.isBlank() ? null : cursor.strip();
    return new Part(0, from, size == null || size.isBlank() ? null : rows(size.strip()), true);
  }

  /** The first rows of it in the order that is leafed by number. */
  public Part byNumber() {
    return new Part(0, null, size, false);
  }

  private static int rows(String size) {
    int rows = size.matches("\\d{1,3}") ? Integer.parseInt(size) : 0;
    if (rows < 1 || rows > SIZE_MAX) {
      throw new PartRefused(PartRefused.SIZE);
    }
    return rows;
  }

  /** How many rows of a list. */
  public int rows(ListOrder order) {
    return size == null ? order.size() : size;
  }
}
