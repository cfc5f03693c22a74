package club.emberwell.desk.home;

import club.emberwell.catalog.store.Unfiled;
import club.emberwell.desk.DeskLimits;
import club.emberwell.desk.flag.Flagged;
import club.emberwell.desk.rule.RuleNote;
import club.emberwell.desk.word.CautionProposal;
import club.emberwell.entry.Entry;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
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
    /** All of it. */
    public int total() {
      return waiting + flagged + words + proposals + removals + joins + notes;
    }

    /** "2 flags", "1 new word", the worst first; what does not wait is left out. */
    public List<String> inWords() {
      List<String> parts = new ArrayList<>();
      add(parts, flagged, "flag", "flags");
      add(parts, waiting, "entry to approve", "entries to approve");
      add(parts, joins, "request to join", "requests to join");
      add(parts, proposals, "proposed caution text", "proposed caution texts");
      add(parts, removals, "removal to confirm", "removals to confirm");
      add(parts, notes, "note of a rule", "notes of rules");
      add(parts, words, "new word", "new words");
      return parts;
    }

    private static void add(List<String> parts, int count, String one, String many) {
      if (count > 0) {
        parts.add(said(count) + " " + (count == 1 ? one : many));
      }
    }

    /** A count as people read it. */
    public static String said(int count) {
      return count > DeskLimits.COUNT ? DeskLimits.COUNT + "+" : Integer.toString(count);
    }
  }

  /**
   * How much waits, whatever it is.
   *
   * @param oldest when the oldest thing began to wait, or null
   * @param late whether something waits longer than anything should
   */
  public record Waiting(Counts counts, Instant oldest, boolean late) {
    public String age() {
      return oldest == null ? "" : said(Duration.between(oldest, Instant.now()));
    }
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
