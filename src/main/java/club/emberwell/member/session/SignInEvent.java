package club.emberwell.member.session;

import club.emberwell.remark.Coded;
import java.util.Locale;

/** What is worth knowing of how somebody came in or left. */
public enum SignInEvent implements Coded {
  SIGNED_IN("Signed in"),
  WRONG_PASSWORD("Wrong password"),
  SIGNED_OUT("Signed out"),
  PASSWORD_CHANGED("Password changed"),
  TOKEN_ELSEWHERE("Token used from another network");

  private final String label;

  SignInEvent(String label) {
    this.label = label;
  }

  @Override
  public String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public String label() {
    return label;
  }
}
