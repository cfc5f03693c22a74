package club.emberwell.api.lot;

import club.emberwell.api.view.KeptPhotoJson;
import club.emberwell.api.view.Times;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.lot.CountedShare;
import club.emberwell.lot.Lot;
import club.emberwell.lot.WrittenLot;
import club.emberwell.lot.drift.Drift;
import club.emberwell.report.photo.KeptPhotos.Kept;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A lot.
 *
 * @param title what lists call it
 * @param found what follows from it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record LotJson(
    UUID id,
    int version,
    EntryState state,
    String title,
    @JsonUnwrapped WrittenLot written,
    @JsonUnwrapped Found found,
    @JsonUnwrapped Times times) {
  /**
   * What follows from a lot and the reports that name it.
   *
   * @param usableShare where it was inspected
   * @param drift where reports can name it: what dose it needs beside earlier lots
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Found(
      @Nullable CountedShare usableShare, @Nullable Drift drift, @Nullable KeptPhotoJson photo) {}

  static LotJson of(Lot lot, Drift drift, Kept photo) {
    Entry.Times at = lot.entry().times();
    return new LotJson(
        lot.id(),
        lot.version(),
        lot.entry().state(),
        lot.title(),
        lot.written(),
        new Found(lot.usableShare().orElse(null), drift, KeptPhotoJson.of(EntryKind.LOT, photo)),
        new Times(at.created(), at.updated()));
  }
}
