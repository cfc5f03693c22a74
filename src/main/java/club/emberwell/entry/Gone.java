package club.emberwell.entry;

/** The entry was public once; what is left of it is that it is gone. */
public class Gone extends RuntimeException {
  private final boolean withdrawn;

  public Gone(EntryKind kind, EntryState state) {
    super(
        state == EntryState.WITHDRAWN
            ? "Its author has withdrawn " + kind.said() + "."
            : "A moderator has removed " + kind.said() + ".");
    withdrawn = state == EntryState.WITHDRAWN;
  }

  /** By its author; else removed by a moderator. */
  public boolean withdrawn() {
    return withdrawn;
  }
}
