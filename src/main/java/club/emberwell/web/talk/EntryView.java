package club.emberwell.web.talk;

import club.emberwell.member.Actor;
import club.emberwell.talk.SafeHtml;
import club.emberwell.talk.TalkEntry;
import club.emberwell.talk.TalkKind;
import club.emberwell.talk.TalkState;
import java.time.Instant;
import java.util.List;

/**
 * A question, an answer or a notice in full.
 *
 * @param kind its code, as flags and the desk name it
 * @param path where it is read
 * @param banner what must be said of its state, or null
 * @param accepted of an answer: whether it is the one that helped
 * @param mayAccept of an answer: whether the reader asked and may say so
 */
record EntryView(
    String id,
    String kind,
    String path,
    int version,
    String title,
    SafeHtml html,
    String member,
    Instant posted,
    String banner,
    List<TieLabels.Tie> ties,
    boolean accepted,
    boolean mayAccept,
    boolean mine,
    boolean mayEdit) {

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
    boolean gone = entry.state() == TalkState.WITHDRAWN || entry.state() == TalkState.REMOVED;
    return new EntryView(
        entry.id().toString(),
        entry.kind().code(),
        entry.path(),
        entry.version(),
        entry.written().title(),
        entry.html(),
        entry.memberHandle(),
        entry.createdAt(),
        banner(entry.state(), entry.kind()),
        labels.of(entry.written().ties()),
        accepted,
        mayAccept,
        mine,
        !gone && (mine || actor.moderates()));
  }

  private static String banner(TalkState state, TalkKind kind) {
    String what = "This " + kind.code();
    return switch (state) {
      case LIVE -> null;
      case WAITING ->
          what
              + " waits for a moderator's first look. Until then only its author and moderators see it.";
      case HELD -> what + " is held by a moderator until something is settled.";
      case REMOVED -> what + " was removed by a moderator.";
      case WITHDRAWN -> what + " was withdrawn by its author.";
    };
  }

  /** Whether its author can take it back. */
  public boolean isMayWithdraw() {
    return mine && mayEdit;
  }

  /** Whether there is an earlier version: its words were changed or an answer was accepted. */
  public boolean isChanged() {
    return version > 1;
  }
}
