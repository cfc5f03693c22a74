package club.emberwell.remark;

/** Somebody else changed the entry since it was read: nothing was stored. */
public class EntryChanged extends RuntimeException {
  private final int version;

  /**
   * @param version the entry's version now
   */
  public EntryChanged(int version) {
    super("Somebody changed this in the meantime; it is now version " + version + ".");
    this.version = version;
  }

  public int version() {
    return version;
  }
}
