package club.emberwell.web.desk;

import club.emberwell.listing.Slice;
import club.emberwell.web.frame.Pager;
import java.util.List;

/**
 * One page of a list.
 *
 * @param empty what to say where nothing is there
 */
record Listing<T>(String title, String empty, List<T> rows, Pager pager) {
  /**
   * @param path of the first page, with or without parameters
   */
  static <T> Listing<T> of(String title, String empty, Slice<T> slice, String path) {
    return new Listing<>(title, empty, slice.rows(), Pager.of(slice, path));
  }
}
