package club.emberwell.hook;

import club.emberwell.entry.EntryKind;
import club.emberwell.remark.Coded;
import jakarta.persistence.EnumeratedValue;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a webhook can be told; codes with a full stop, as the Standard Webhooks specification asks.
 */
public enum HookEvent implements Coded {
  RESULT_POSTED("result.posted", "A result is new", "report", Move.APPEARED),
  RESULT_CHANGED("result.changed", "A result was changed", "report", Move.CHANGED),
  RESULT_WITHDRAWN("result.withdrawn", "A result is no longer shown", "report", Move.GONE),
  QUESTION_ASKED("question.asked", "A question was asked", "question", Move.APPEARED),
  QUESTION_ANSWERED("question.answered", "A question was answered", "answer", Move.APPEARED),
  RESULT_COMMENTED("result.commented", "A result was commented on", "comment", Move.APPEARED),
  NOTICE_POSTED("notice.posted", "A notice was posted", "notice", Move.APPEARED),
  DESK_WAITING("desk.waiting", "Desk: an entry waits for approval", null, Move.WAITING),
  DESK_FLAGGED("desk.flagged", "Desk: a member flagged an entry", "flag", Move.WAITING),
  DESK_NOTED("desk.noted", "Desk: a rule noticed an entry", "note", Move.WAITING),
  DESK_WORD("desk.word", "Desk: a new word was used", "word", Move.WAITING),
  DESK_PROPOSED("desk.proposed", "Desk: a caution text was proposed", "proposal", Move.WAITING),
  DESK_REQUESTED("desk.requested", "Desk: somebody asks to join", "request", Move.WAITING),
  /** Sent when an owner asks for it, whatever was chosen. */
  TEST("webhook.test", "A test", null, null);

  /** What an owner can choose. */
  public static final List<HookEvent> CHOICES =
      Stream.of(values()).filter(event -> event != TEST).toList();

  /** What became of something, as the change rows say it. */
  enum Move {
    APPEARED,
    CHANGED,
    GONE,
    WAITING
  }

  @EnumeratedValue private final String code;
  private final String label;
  private final String of;
  private final Move move;

  HookEvent(String code, String label, String of, Move move) {
    this.code = code;
    this.label = label;
    this.of = of;
    this.move = move;
  }

  @Override
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }

  /** Whether it is for moderators: it then names the item and says nothing of what is in it. */
  boolean ofTheDesk() {
    return move == Move.WAITING;
  }

  /** Whether it says what can be read, so that it is told only while that is so. */
  boolean shows() {
    return move == Move.APPEARED || move == Move.CHANGED;
  }

  /** What a change row tells; empty where it is nothing that anybody is told. */
  static Optional<HookEvent> of(String entity, Move move) {
    boolean entry =
        Coded.of(EntryKind.class, entity).filter(EntryKind.SHARED::contains).isPresent();
    return Stream.of(values())
        .filter(event -> event.move == move && (event.of == null ? entry : event.of.equals(entity)))
        .findFirst();
  }
}
