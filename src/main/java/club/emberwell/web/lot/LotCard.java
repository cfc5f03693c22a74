package club.emberwell.web.lot;

import club.emberwell.lot.Lot;
import club.emberwell.lot.WrittenLot;
import club.emberwell.lot.WrittenLot.Counts;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.UUID;

/**
 * A lot as its owner sees it.
 *
 * @param received the day it came, null where nobody said
 * @param pieces how many came and what became of them
 * @param drift what dose it needs; null where no report can name it
 */
record LotCard(
    UUID id,
    int version,
    String title,
    WrittenLot written,
    Instant received,
    Pieces pieces,
    DriftText drift) {
  /**
   * How many pieces.
   *
   * @param counts "46 of 50 usable, 12 burned"
   * @param share with its interval; null where they were not looked at
   * @param left how many usable pieces are not burned yet; null where it is not known
   */
  record Pieces(String counts, String share, Integer left) {}

  static LotCard of(Lot lot, DriftText drift) {
    WrittenLot w = lot.written();
    Counts c = w.counts();
    return new LotCard(
        lot.id(),
        lot.version(),
        lot.title(),
        w,
        w.date() == null
            ? null
            : LocalDate.parse(w.date()).atStartOfDay(ZoneOffset.UTC).toInstant(),
        new Pieces(
            counts(c),
            lot.usableShare().map(ShareText::of).orElse(null),
            c.usable() == null ? null : c.usable() - (c.burned() == null ? 0 : c.burned())),
        drift);
  }

  private static String counts(Counts c) {
    String usable =
        c.usable() == null
            ? c.received() + " received, not inspected yet"
            : c.usable() + " of " + c.received() + " usable";
    return c.burned() == null ? usable : usable + ", " + c.burned() + " burned";
  }
}
