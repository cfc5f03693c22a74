package club.emberwell.web.lot;

import club.emberwell.lot.LotLimits;
import club.emberwell.lot.WrittenLot;
import club.emberwell.lot.WrittenLot.Blank;
import club.emberwell.lot.WrittenLot.Counts;
import club.emberwell.remark.EntryRefused;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;

/** The fields of a lot, from and to what its owner wrote. */
final class LotForm {
  /** Digits of a number of pieces and some room to see a slip. */
  private static final int DIGITS = 12;

  private static final String SHARED = "true";

  private LotForm() {}

  /**
   * @param id of a new lot, so that sending twice makes one; null for one that exists
   */
  static Form of(UUID id) {
    Form form = new Form();
    form.add(Field.of("id", "Id").hidden().value(Objects.toString(id, "")));
    form.add(Field.of("supplier", "Supplier").maxLength(LotLimits.WORDS).required());
    form.add(
        Field.of("batch", "Lot number")
            .hint("As the supplier calls it. Reports that name it show whether the dose changed.")
            .maxLength(LotLimits.WORDS));
    form.add(
        Field.of("material", "Material").list("materials").maxLength(LotLimits.WORDS).required());
    form.add(Field.of("coating", "Coating").list("coatings").maxLength(LotLimits.WORDS));
    form.add(Field.of("colour", "Colour").list("colours").maxLength(LotLimits.WORDS));
    form.add(pieces("received", "Pieces received").required());
    form.add(pieces("usable", "Of these usable").hint("After you looked at them."));
    form.add(pieces("burned", "Of these burned").hint("Used up for jobs and tests."));
    form.add(Field.of("date", "Date received").hint("Year-month-day").type("date"));
    form.add(
        Field.of("inspection", "What you saw when you looked at them")
            .hint("Scratches, another shade, thin coating.")
            .lines()
            .maxLength(LotLimits.NOTES));
    form.add(Field.of("notes", "Notes").lines().maxLength(LotLimits.NOTES));
    form.add(
        Field.of("shared", "Shared with members")
            .hint(
                "They see the supplier’s name, what the pieces are, the counts and the month, once"
                    + " three members share lots of this supplier. They never see who it was, nor"
                    + " notes, photos and lot numbers.")
            .several()
            .choice(SHARED, "Count this lot for its supplier"));
    return form;
  }

  static Field pieces(String name, String label) {
    return Field.of(name, label).inputMode("numeric").maxLength(DIGITS);
  }

  /**
   * What was typed.
   *
   * @throws EntryRefused for letters where a number should be
   */
  static WrittenLot written(SentForm sent) {
    WrittenLot written =
        new WrittenLot(
            sent.text("supplier"),
            sent.text("batch"),
            new Blank(sent.text("material"), sent.text("coating"), sent.text("colour")),
            new Counts(sent.number("received"), sent.number("usable"), sent.number("burned")),
            sent.text("date"),
            sent.text("inspection"),
            sent.text("notes"),
            sent.flag("shared"));
    if (!sent.remarks().isEmpty()) {
      throw new EntryRefused(sent.remarks());
    }
    return written;
  }

  /** What was written, by field name. */
  static Map<String, String> values(WrittenLot w) {
    Map<String, String> values = new LinkedHashMap<>();
    values.put("supplier", w.supplier());
    values.put("batch", w.batch());
    values.put("material", w.blank().material());
    values.put("coating", w.blank().coating());
    values.put("colour", w.blank().colour());
    values.put("received", Objects.toString(w.counts().received(), ""));
    values.put("usable", Objects.toString(w.counts().usable(), ""));
    values.put("burned", Objects.toString(w.counts().burned(), ""));
    values.put("date", w.date());
    values.put("inspection", w.inspection());
    values.put("notes", w.notes());
    values.put("shared", w.shared() ? SHARED : "");
    return values;
  }
}
