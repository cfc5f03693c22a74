package club.emberwell.talk;

import club.emberwell.search.talk.TalkSource;

/** What members write to each other. */
public enum TalkKind {
  QUESTION(TalkSource.QUESTION, "Question"),
  ANSWER(TalkSource.ANSWER, "Answer"),
  NOTICE(TalkSource.NOTICE, "Notice");

  private final String code;
  private final String label;

  TalkKind(String code, String label) {
    this.code = code;
    this.label = label;
  }

  /** The word in the API, in change rows and in the audit. */
  public String code() {
    return code;
  }

  public String label() {
    return label;
  }
}
