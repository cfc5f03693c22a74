package club.emberwell.remark;

/** What was asked may be known but not done by whoever asks. */
public final class EntryForbidden extends TurnedDown {
  private final Why why;

  /** What stands in the way. */
  public enum Why {
    /** It is somebody else's. */
    NOT_YOURS,
    /** Nobody decides about what is their own. */
    YOUR_OWN,
    /** A higher role may. */
    ROLE,
    /** What became of it meanwhile, or something else that has to come first. */
    STATE,
    /** What the club decided, or its server can do. */
    CLUB,
    /** The account waits, was declined or is banned. */
    ACCOUNT
  }

  /**
   * @param words one sentence for a person
   */
  public EntryForbidden(Why why, String words) {
    super(words);
    this.why = why;
  }

  public Why why() {
    return why;
  }
}
