package club.emberwell.web.account;

import club.emberwell.member.door.NewMember;
import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;
import club.emberwell.web.frame.SentForm;

/** The fields that several forms about accounts share. */
final class AccountFields {
  static final int HANDLE_LENGTH = 30;
  static final int PASSWORD_LENGTH = 128;
  private static final int REQUEST_LENGTH = 1000;
  static final int EMAIL_LENGTH = 254;

  private AccountFields() {}

  /** Name, address and password of somebody new. */
  static Form newMember() {
    return new Form().add(handle()).add(newPassword("password")).add(email());
  }

  /** What was typed into them. */
  static NewMember newMember(SentForm sent) {
    return new NewMember(sent.typed("handle"), sent.typed("email"), sent.typed("password"));
  }

  static Field handle() {
    return Field.of("handle", "User name")
        .hint("3 to 30 letters, digits, - and _. Others see it beside what you post.")
        .autocomplete("username")
        .maxLength(HANDLE_LENGTH)
        .required();
  }

  static Field email() {
    return Field.of("email", "E-mail address")
        .hint("Optional: only for a forgotten password and for your watches. Nobody sees it.")
        .type("email")
        .autocomplete("email")
        .maxLength(EMAIL_LENGTH);
  }

  static Field newPassword(String name) {
    return Field.of(name, "Password")
        .hint("At least 8 characters. Several words are better than one.")
        .type("password")
        .autocomplete("new-password")
        .maxLength(PASSWORD_LENGTH)
        .required();
  }

  /** The present password, as proof. */
  static Field proof() {
    return knownPassword("password", "Your password").hint("To confirm it is you.");
  }

  /** What somebody says who asks to join. */
  static Field request() {
    return Field.of("request", "Who you are and why you would like to join")
        .hint("Moderators read it. It is deleted when they have decided.")
        .maxLength(REQUEST_LENGTH)
        .lines()
        .required();
  }

  static Field knownPassword(String name, String label) {
    return Field.of(name, label)
        .type("password")
        .autocomplete("current-password")
        .maxLength(PASSWORD_LENGTH)
        .required();
  }

  /**
   * For another password of somebody who knows the present one.
   *
   * @param tokens whether there are any to be asked about
   */
  static Form anotherPassword(boolean tokens) {
    Form form =
        new Form()
            .add(knownPassword("current_", "Current password"))
            .add(
                Field.of("password", "New password")
                    .type("password")
                    .autocomplete("new-password")
                    .maxLength(PASSWORD_LENGTH)
                    .required());
    return tokens ? form.add(tokensToo()) : form;
  }

  private static Field tokensToo() {
    return Field.of("programs", "Your tokens for programs")
        .hint("Keep them only if nobody else can know them.")
        .choice("end", "End them too")
        .choice("keep", "Keep them")
        .value("end")
        .required();
  }
}
