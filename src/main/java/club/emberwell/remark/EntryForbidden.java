package club.emberwell.remark;

/** The entry may be seen but not changed by whoever asks. */
public class EntryForbidden extends RuntimeException {
  public EntryForbidden(String why) {
    super(why);
  }
}
