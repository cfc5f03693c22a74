package club.emberwell.catalog.store;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.RemarkId;
import java.util.Map;
import java.util.UUID;

/**
 * Who changes the catalog, and why.
 *
 * @param by id of the member; null where the data files did
 * @param why for the history, 1 to {@link CatalogLimits#REASON} characters
 * @param action what the log calls it; null where it is no line of the log
 * @param detail what the log says besides
 */
public record Deed(UUID by, String why, String action, Map<String, Object> detail) {
  public Deed {
    why = why == null ? "" : why.strip();
    if (why.isEmpty() || why.length() > CatalogLimits.REASON) {
      throw new EntryRefused(
          RemarkId.REASON_MISSING,
          "/reason",
          "Give a reason of 1 to " + CatalogLimits.REASON + " characters.");
    }
    detail = Map.copyOf(detail);
  }

  /** No line of the log, or part of a deed that has one. */
  public Deed(UUID by, String why) {
    this(by, why, null, Map.of());
  }

  /** The same as a line of the log. */
  public Deed as(String called) {
    return new Deed(by, why, called, Map.of());
  }

  /**
   * The same as a line of the log.
   *
   * @param value what it says besides; null where nothing was sent, which is refused later
   */
  public Deed as(String called, String key, String value) {
    return value == null ? as(called) : new Deed(by, why, called, Map.of(key, value));
  }

  Deed part() {
    return new Deed(by, why);
  }
}
