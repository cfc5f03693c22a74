package club.emberwell.web.talk;

import club.emberwell.entry.EntryKind;
import club.emberwell.entry.EntryState;
import club.emberwell.member.Actor;
import club.emberwell.talk.SafeHtml;
import club.emberwell.talk.TalkEntry;
import club.emberwell.web.caution.MarkView;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A question, an answer, a notice or a comment in full.
 *
 * @param banner what must be said of its state, or null
 * @param accepted of an answer: whether it is the one that helped
 */
record EntryView(
    Place at,
    String title,
    SafeHtml html,
    Author author,
    String banner,
    About about,
    boolean accepted,
    Allowed may) {

  /**
   * What it is about.
   *
   * @param mark its heaviest caution, or null
   */
  record About(List<TieLabels.Tie> ties, @Nullable MarkView mark) {}

  public List<TieLabels.Tie> ties() {
    return about.ties();
  }

  public @Nullable MarkView mark() {
    return about.mark();
  }

  /**
   * Where it is found.
   *
   * @param kind its code, as flags and the desk name it
   * @param path where it is read
   */
  record Place(String id, String kind, String path, int version) {
    /** Whether there is an earlier version: its words were changed or an answer was accepted. */
    public boolean isChanged() {
      return version > 1;
    }
  }

  /**
   * Who wrote it.
   *
   * @param me whether the reader did
   */
  record Author(String handle, Instant posted, boolean me) {}

  /**
   * What the reader may do.
   *
   * @param accept of an answer: whether the reader asked and may say that it helped
   */
  record Allowed(boolean edit, boolean withdraw, boolean accept) {}

  static EntryView of(TalkEntry entry, Actor actor, TieLabels labels) {
    return of(entry, actor, labels, false, false);
  }

  static EntryView answer(TalkEntry answer, TalkEntry question, Actor actor, TieLabels labels) {
    boolean asked = actor.is(question.memberId()) && question.isLive();
    return of(
        answer, actor, labels, answer.id().equals(question.accepted()), asked && answer.isLive());
  }

  private static EntryView of(
      TalkEntry entry, Actor actor, TieLabels labels, boolean accepted, boolean mayAccept) {
    boolean mine = actor.is(entry.memberId());
    boolean gone = entry.state() == EntryState.WITHDRAWN || entry.state() == EntryState.REMOVED;
    return new EntryView(
        new Place(entry.id().toString(), entry.kind().code(), entry.path(), entry.version()),
        entry.written().title(),
        entry.html(),
        new Author(entry.memberHandle(), entry.createdAt(), mine),
        banner(entry.state(), entry.kind()),
        new About(labels.of(entry.written().ties()), labels.mark(entry.written().ties())),
        accepted,
        new Allowed(!gone && (mine || actor.moderates()), !gone && mine, mayAccept));
  }

  private static String banner(EntryState state, EntryKind kind) {
    String what = "This " + kind.code();
    return switch (state) {
      case LIVE -> null;
      case WAITING ->
          what
              + " waits for approval by a moderator. Until then only its author and moderators see it.";
      case HELD -> what + " is held by a moderator while something is checked.";
      case REMOVED -> what + " was removed by a moderator.";
      case WITHDRAWN -> what + " was withdrawn by its author.";
    };
  }
}
