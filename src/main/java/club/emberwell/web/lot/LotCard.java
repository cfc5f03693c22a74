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
 * @param counts "46 of 50 usable, 12 burned"
 * @param left how many usable pieces are not burned yet; null where it is not known
 */
record LotCard(
    UUID id,
    int version,
    String title,
    String supplier,
    Instant received,
    String counts,
    Integer left,
    String notes) {
  static LotCard of(Lot lot) {
    WrittenLot w = lot.written();
    Counts c = w.counts();
    return new LotCard(
        lot.id(),
        lot.version(),
        lot.title(),
        w.supplier(),
        w.date() == null
            ? null
            : LocalDate.parse(w.date()).atStartOfDay(ZoneOffset.UTC).toInstant(),
        counts(c),
        c.usable() == null ? null : c.usable() - (c.burned() == null ? 0 : c.burned()),
        w.notes());
  }

  private static String counts(Counts c) {
    String usable =
        c.usable() == null
            ? c.received() + " received, not inspected yet"
            : c.usable() + " of " + c.received() + " usable";
    return c.burned() == null ? usable : usable + ", " + c.burned() + " burned";
  }
}
