package club.emberwell.web.desk;

import club.emberwell.desk.flag.FlagReason;
import club.emberwell.desk.flag.Flagged;
import club.emberwell.desk.home.DeskHome;
import club.emberwell.desk.rule.RuleNote;
import club.emberwell.entry.Entry;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Collectors;

/**
 * One line of a list of items.
 *
 * @param age how long ago, in words
 * @param why what is to be said beside it, or null
 * @param note id of the rule's note to lay aside, or null
 */
record ItemRow(
    String href,
    String kind,
    String title,
    String author,
    String state,
    String age,
    String why,
    Long note) {
  static ItemRow of(Entry item) {
    return row(item, item.times().created(), null, null);
  }

  static ItemRow of(Flagged flagged) {
    String reasons =
        flagged.reasons().stream().map(FlagReason::label).collect(Collectors.joining(", "));
    String times = flagged.flags() == 1 ? "1 member" : flagged.flags() + " members";
    String owners = flagged.forOwners() ? " (for an owner)" : "";
    return row(flagged.item(), flagged.oldest(), reasons + ", by " + times + owners, null);
  }

  static ItemRow of(RuleNote note) {
    Long open = note.state().equals("open") ? note.id() : null;
    return row(note.item(), note.at(), note.rule().label() + ": " + note.detail(), open);
  }

  private static ItemRow row(Entry item, Instant since, String why, Long note) {
    return new ItemRow(
        item.deskPath(),
        item.kind().label(),
        item.title().isBlank() ? "(no words)" : item.title(),
        item.author().handle(),
        item.state().code(),
        DeskHome.said(Duration.between(since, Instant.now())),
        why,
        note);
  }
}
