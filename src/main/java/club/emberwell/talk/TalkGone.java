package club.emberwell.talk;

/** The entry was public once; what is left of it is that it is gone. */
public class TalkGone extends RuntimeException {
  public TalkGone(TalkState state) {
    super(
        state == TalkState.WITHDRAWN
            ? "Its author has withdrawn this."
            : "A moderator has removed this.");
  }
}
