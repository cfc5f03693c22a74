package club.emberwell.remark;

/** What was asked for does not exist, or must not be known to whoever asks. */
public class EntryUnknown extends RuntimeException {
  public EntryUnknown(String what) {
    super("There is no such " + what + ".");
  }
}
