package club.emberwell.web.lot;

import club.emberwell.lot.drift.Drift;
import club.emberwell.lot.drift.Drift.Change;
import club.emberwell.lot.drift.Drift.Noticed;
import club.emberwell.lot.drift.SharedDrift;
import club.emberwell.quantity.NumberStyle;
import club.emberwell.quantity.QuantityPrinter;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * What is said of the dose a lot needs.
 *
 * @param sentence beside earlier lots
 * @param noticed what the check over all of them found, or null
 * @param others what members say who share theirs, or null
 * @param alarm whether there is something to do
 */
record DriftText(String sentence, String noticed, String others, boolean alarm) {
  /** What may be told of the check; {@code LotDriftTest} holds it. */
  static final String RATE =
      "Of 100 suppliers that never change, at most about 6 are flagged within 20 lots. A change is"
          + " noticed with its second lot at the soonest. Where single lots differ by 10 %, one of"
          + " 20 % that comes after ten lots is noticed within ten more in about 8 of 10 cases, one"
          + " that comes after five in half of them.";

  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMM uuuu", Locale.ENGLISH);

  private static final double HUNDREDTHS = 100;

  /** Lots it takes beside the one that is compared. */
  private static final int FEWEST = 3;

  static DriftText of(Drift drift, String batch, NumberStyle style) {
    Change change = drift.change();
    return new DriftText(
        sentence(drift, batch, style),
        drift.noticed() == null ? null : noticed(drift.noticed(), style),
        drift.others() == null
            ? null
            : "Lots of %d other members who share theirs, since then against before: %s."
                .formatted(drift.others().members(), change(drift.others().change(), style)),
        change != null && change.isClear() || drift.noticed() != null);
  }

  /** "1.08 (0.97 to 1.20)" for a table; null where nothing is known. */
  static String ratio(Drift drift, NumberStyle style) {
    if (drift == null || drift.change() == null) {
      return null;
    }
    Change change = drift.change();
    return "%s (%s to %s)"
        .formatted(
            number(change.ratio(), style),
            number(change.low(), style),
            number(change.high(), style));
  }

  private static String sentence(Drift drift, String batch, NumberStyle style) {
    if (!drift.burned()) {
      return "No report of yours names this lot yet. Write “%s” as the lot of a report, and we compare its dose with your earlier lots."
          .formatted(batch);
    }
    if (drift.change() == null) {
      return "We do not know yet whether this lot needs another dose: %s burned, it takes %d on the same machine and work."
          .formatted(
              drift.earlier() == 1 ? "1 earlier lot was" : drift.earlier() + " earlier lots were",
              FEWEST);
    }
    return drift.change().isClear()
        ? "This lot needs another dose than earlier ones: %s.".formatted(against(drift, style))
        : "No other dose shows than for earlier lots: %s.".formatted(against(drift, style));
  }

  private static String against(Drift drift, NumberStyle style) {
    int lots = drift.change().lots();
    return "%s; compared with %s"
        .formatted(change(drift.change(), style), lots == 1 ? "1 lot" : lots + " lots");
  }

  private static String change(Change change, NumberStyle style) {
    return "%s times (95 %% interval %s to %s)"
        .formatted(
            number(change.ratio(), style),
            number(change.low(), style),
            number(change.high(), style));
  }

  private static String noticed(Noticed noticed, NumberStyle style) {
    return "Since the lot of %s doses are about %s times what they were; noticed with the lot of %s."
        .formatted(
            LocalDate.parse(noticed.since()).format(DAY),
            number(noticed.ratio(), style),
            LocalDate.parse(noticed.at()).format(DAY));
  }

  /** Of the lots that members share, by month. */
  static String shared(SharedDrift drift, NumberStyle style) {
    String looked =
        "%s: %d lots that %d members burned"
            .formatted(drift.blanks(), drift.lots(), drift.members());
    if (drift.noticed().isEmpty()) {
      return looked + "; no change of the dose is noticed.";
    }
    Noticed last = drift.noticed().get(drift.noticed().size() - 1);
    return "%s; since %s doses are about %s times what they were, noticed in %s."
        .formatted(looked, last.since(), number(last.ratio(), style), last.at());
  }

  private static String number(double ratio, NumberStyle style) {
    return QuantityPrinter.number(Math.round(ratio * HUNDREDTHS) / HUNDREDTHS, style);
  }
}
