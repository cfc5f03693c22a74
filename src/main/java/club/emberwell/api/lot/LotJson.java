package club.emberwell.api.lot;

import club.emberwell.api.view.Times;
import club.emberwell.entry.Entry;
import club.emberwell.entry.EntryState;
import club.emberwell.lot.Lot;
import club.emberwell.lot.WrittenLot;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.UUID;

/**
 * A lot.
 *
 * @param title what lists call it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
record LotJson(
    UUID id,
    int version,
    EntryState state,
    String title,
    @JsonUnwrapped WrittenLot written,
    @JsonUnwrapped Times times) {
  static LotJson of(Lot lot) {
    Entry.Times at = lot.entry().times();
    return new LotJson(
        lot.id(),
        lot.version(),
        lot.entry().state(),
        lot.title(),
        lot.written(),
        new Times(at.created(), at.updated()));
  }
}
