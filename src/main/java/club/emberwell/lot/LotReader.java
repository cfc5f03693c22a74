package club.emberwell.lot;

import club.emberwell.bench.FieldReader;
import club.emberwell.lot.WrittenLot.Blank;
import club.emberwell.lot.WrittenLot.Counts;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.remark.EntryRefused;
import club.emberwell.remark.Remark;
import club.emberwell.remark.RemarkId;
import club.emberwell.remark.Remarks;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneOffset;

/** Reads a lot as written into what is stored; pure but for the day it is. */
final class LotReader {
  private LotReader() {}

  /**
   * The lot with its texts trimmed.
   *
   * @throws EntryRefused with a remark for every field at fault
   */
  static WrittenLot read(WrittenLot w) {
    FieldReader in = new FieldReader(NumberStyle.ANY);
    in.required("/supplier", w.supplier());
    in.required("/material", w.blank().material());
    Blank blank =
        new Blank(
            in.text("/material", w.blank().material(), LotLimits.WORDS, false),
            in.text("/coating", w.blank().coating(), LotLimits.WORDS, false),
            in.text("/colour", w.blank().colour(), LotLimits.WORDS, false));
    String supplier = in.text("/supplier", w.supplier(), LotLimits.WORDS, false);
    counts(w.counts(), in);
    String date = date(w.date(), in);
    String batch = in.text("/batch", w.batch(), LotLimits.WORDS, false);
    String inspection = in.text("/inspection", w.inspection(), LotLimits.NOTES, true);
    String notes = in.text("/notes", w.notes(), LotLimits.NOTES, true);
    Remarks.refuse(in.remarks());
    return new WrittenLot(supplier, batch, blank, w.counts(), date, inspection, notes, w.shared());
  }

  private static void counts(Counts counts, FieldReader in) {
    in.required("/received", counts.received());
    boolean fit =
        fits("/received", counts.received(), 1, in)
            & fits("/usable", counts.usable(), 0, in)
            & fits("/burned", counts.burned(), 0, in);
    if (!fit || counts.received() == null) {
      return;
    }
    int usable = counts.usable() == null ? counts.received() : counts.usable();
    if (usable > counts.received()) {
      String detail = "%d usable of %d received cannot be.".formatted(usable, counts.received());
      in.add(Remark.error(RemarkId.LOT_COUNTS, "/usable", detail));
    } else if (counts.burned() != null && counts.burned() > usable) {
      String of = counts.usable() == null ? "received" : "usable";
      String detail = "%d burned of %d %s cannot be.".formatted(counts.burned(), usable, of);
      in.add(Remark.error(RemarkId.LOT_COUNTS, "/burned", detail));
    }
  }

  private static boolean fits(String pointer, Integer pieces, int least, FieldReader in) {
    boolean fits = pieces == null || pieces >= least && pieces <= LotLimits.PIECES;
    if (!fits) {
      String detail = "From %d to %,d pieces.".formatted(least, LotLimits.PIECES);
      in.add(Remark.error(RemarkId.OUT_OF_RANGE, pointer, detail));
    }
    return fits;
  }

  private static String date(String written, FieldReader in) {
    if (written == null || written.isBlank()) {
      return null;
    }
    try {
      LocalDate date = LocalDate.parse(written.strip());
      // a day ahead is today somewhere
      if (date.isBefore(LotLimits.EARLIEST)
          || date.isAfter(LocalDate.now(ZoneOffset.UTC).plusDays(1))) {
        String detail = "A day from %s to today.".formatted(LotLimits.EARLIEST);
        in.add(Remark.error(RemarkId.DATE_UNREADABLE, "/date", detail));
      }
      return date.toString();
    } catch (DateTimeException e) {
      String detail = "Write the date as year-month-day, such as 2026-09-12.";
      in.add(Remark.error(RemarkId.DATE_UNREADABLE, "/date", detail));
      return null;
    }
  }
}
