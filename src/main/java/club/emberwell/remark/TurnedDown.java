package club.emberwell.remark;

/** Who asks is told no, whatever the fields say. */
public abstract sealed class TurnedDown extends RuntimeException
    permits EntryForbidden, Unproven, TooManyTries, ConfirmationNeeded {
  TurnedDown(String why) {
    super(why);
  }
}
