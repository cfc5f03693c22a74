package club.emberwell.web.desk;

import club.emberwell.desk.Slice;
import java.util.List;

/**
 * One page of a list.
 *
 * @param empty what to say where nothing is there
 * @param newer address of the page before, or null
 * @param older address of the page after, or null
 */
record Listing<T>(String title, String empty, List<T> rows, String newer, String older) {
  /**
   * @param path of the list, with a question mark or parameters already
   */
  static <T> Listing<T> of(String title, String empty, Slice<T> slice, String path) {
    String joint = path.contains("?") ? "&" : "?";
    return new Listing<>(
        title,
        empty,
        slice.rows(),
        slice.page() > 0 ? path + joint + "page=" + slice.previous() : null,
        slice.more() ? path + joint + "page=" + slice.next() : null);
  }
}
