package club.emberwell.web.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.talk.TalkEntry;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;

/**
 * A question or a notice on one line.
 *
 * @param state how far a question got, in words; null for a notice
 * @param settled whether an answer was accepted
 */
public record EntryLine(
    String href,
    String kind,
    String title,
    Deed last,
    String state,
    boolean settled,
    List<String> ties) {
  /**
   * By whom it is, and what was done last.
   *
   * @param what asked, posted or answered, which its list goes by
   */
  public record Deed(String member, String what, Instant at) {}

  static EntryLine of(TalkEntry entry, TieLabels labels) {
    boolean asks = entry.kind() == EntryKind.QUESTION;
    return new EntryLine(
        entry.path(),
        entry.kind().label(),
        entry.written().title(),
        new Deed(entry.memberHandle(), asks ? deed(entry) : "posted", entry.activeAt()),
        asks ? state(entry) : null,
        entry.accepted() != null,
        labels.of(entry.written().ties()).stream().map(TieLabels.Tie::label).toList());
  }

  static List<EntryLine> of(List<TalkEntry> entries, TieLabels labels) {
    return entries.stream().map(entry -> of(entry, labels)).toList();
  }

  private static String deed(TalkEntry question) {
    return switch (question.answers()) {
      case 0 -> "asked";
      case 1 -> "answered";
      default -> "last answered";
    };
  }

  private static String state(TalkEntry entry) {
    String answers =
        switch (entry.answers()) {
          case 0 -> "no answer yet";
          case 1 -> "1 answer";
          default -> entry.answers() + " answers";
        };
    return String.join(
        ", ",
        Stream.of(answers, entry.accepted() == null ? "" : "one answer helped")
            .filter(s -> !s.isEmpty())
            .toList());
  }
}
