package club.emberwell.remark;

/** The entry may be seen but not changed by whoever asks. */
public final class EntryForbidden extends TurnedDown {
  public EntryForbidden(String why) {
    super(why);
  }
}
