package club.emberwell.catalog.store;

import club.emberwell.catalog.CatalogLimits;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;

/**
 * Who changes the catalog, and why.
 *
 * @param who a stable name of the person; two deeds of one person carry the same
 * @param why for the history, 1 to {@link CatalogLimits#REASON} characters
 */
public record Deed(String who, String why) {
  public Deed {
    if (who == null || who.isBlank()) {
      throw new IllegalArgumentException("a deed has a doer");
    }
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
