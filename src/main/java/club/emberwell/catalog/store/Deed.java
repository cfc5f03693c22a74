package club.emberwell.catalog.store;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import java.util.UUID;

/**
 * Who changes the catalog, and why.
 *
 * @param by id of the member; null where the data files did
 * @param why for the history, 1 to {@link CatalogLimits#REASON} characters
 */
public record Deed(UUID by, String why) {
  public Deed {
    why = why == null ? "" : why.strip();
    if (why.isEmpty() || why.length() > CatalogLimits.REASON) {
      throw new EntryRefused(
          Remark.error(
              RemarkId.REASON_MISSING,
              "/reason",
              "Say why, in 1 to " + CatalogLimits.REASON + " characters."));
    }
  }
}
