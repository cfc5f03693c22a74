package club.emberwell.desk.home;

import club.emberwell.catalog.store.Unfiled;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.flag.Flagged;
import club.emberwell.desk.rule.RuleNote;
import club.emberwell.desk.word.CautionProposal;
import club.emberwell.entry.Entry;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * The first screen of the desk: the head of each list, and how long the lists are.
 *
 * @param oldest when the oldest item began to wait, or null
 * @param late whether it waits longer than anything should
 */
public record DeskHome(
    Counts counts,
    Instant oldest,
    boolean late,
    List<Entry> waiting,
    List<Flagged> flagged,
    List<Unfiled> words,
    List<CautionProposal> proposals,
    List<RuleNote> notes) {

  /** Counted to {@link DeskLimits#COUNT} + 1, which stands for "more than that". */
  public record Counts(
      int waiting, int flagged, int words, int proposals, int removals, int joins, int notes) {
    /** A count as people read it. */
    public static String said(int count) {
      return count > DeskLimits.COUNT ? DeskLimits.COUNT + "+" : Integer.toString(count);
    }
  }

  /** How long the oldest item has waited, in words. */
  public String age() {
    return oldest == null ? "" : said(Duration.between(oldest, Instant.now()));
  }

  /** A stretch of time in its largest unit. */
  public static String said(Duration time) {
    long hours = time.toHours();
    if (hours < 1) {
      return Math.max(1, time.toMinutes()) + " min";
    }
    return hours < 72 ? hours + " h" : time.toDays() + " days";
  }
}
