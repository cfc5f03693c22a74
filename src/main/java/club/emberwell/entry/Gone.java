package club.emberwell.entry;

/** The entry was public once; what is left of it is that it is gone. */
public class Gone extends RuntimeException {
  public Gone(EntryKind kind, EntryState state) {
    super(
        state == EntryState.WITHDRAWN
            ? "Its author has withdrawn " + kind.said() + "."
            : "A moderator has removed " + kind.said() + ".");
  }
}
