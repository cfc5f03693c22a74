package club.emberwell.remark;

/** Who asks has to prove once more, right now, who they are: what they ask for is grave. */
public final class ConfirmationNeeded extends TurnedDown {
  private final boolean byPassword;

  /**
   * @param byPassword whether a password would prove it; else only the sign-in provider can
   */
  public ConfirmationNeeded(boolean byPassword) {
    super(
        byPassword
            ? "Enter your password to confirm that it is you."
            : "Sign in again with single sign-on to confirm that it is you.");
    this.byPassword = byPassword;
  }

  public boolean byPassword() {
    return byPassword;
  }
}
