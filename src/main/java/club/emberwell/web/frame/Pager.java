package club.emberwell.web.frame;

import club.emberwell.listing.Part;
import club.emberwell.listing.Slice;
import java.util.function.IntFunction;

/**
 * Where the pages beside this one are.
 *
 * @param newer address or null
 * @param older address or null
 */
public record Pager(String newer, String older) {
  /**
   * @param base address of the first page, with or without a question mark in it
   */
  public static Pager of(Slice<?> slice, String base) {
    return of(
        slice, page -> page == 0 ? base : base + (base.contains("?") ? "&" : "?") + "page=" + page);
  }

  /**
   * @param address of a page by its number
   */
  public static Pager of(Slice<?> slice, IntFunction<String> address) {
    return new Pager(
        slice.page() > 0 ? address.apply(slice.page() - 1) : null,
        slice.more() ? address.apply(slice.page() + 1) : null);
  }

  /**
   * Of a search, which knows how many pages it has.
   *
   * @param page 0 = the first
   * @param address of a page by its number
   */
  public static Pager of(int page, int pages, IntFunction<String> address) {
    return new Pager(
        page > 0 ? address.apply(page - 1) : null,
        page + 1 < pages ? address.apply(page + 1) : null);
  }

  /** The page in an address; the first for whatever is none. */
  public static Part part(String text) {
    return text != null && text.matches("\\d{1,6}")
        ? Part.page(Integer.parseInt(text))
        : Part.FIRST;
  }
}
