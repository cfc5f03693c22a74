package club.emberwell.member.door;

import java.text.Normalizer;

/**
 * What a person enters to become a member.
 *
 * @param email null or empty for none
 */
public record NewMember(String handle, String email, String password) {
  /** Unicode in one form, so that equal names compare equal. */
  public NewMember normal() {
    return new NewMember(nfkc(handle), nfkc(email), password);
  }

  private static String nfkc(String text) {
    return text == null ? null : Normalizer.normalize(text, Normalizer.Form.NFKC).strip();
  }
}
