package club.emberwell.web.account;

import club.emberwell.web.frame.Field;
import club.emberwell.web.frame.Form;

/** The fields that several forms about accounts share. */
final class AccountFields {
  static final int HANDLE_LENGTH = 30;
  static final int PASSWORD_LENGTH = 128;
  static final int EMAIL_LENGTH = 254;

  private AccountFields() {}

  /** Name, address and password of somebody new. */
  static Form newMember(String handle, String email) {
    return new Form().add(handle(handle)).add(email(email)).add(newPassword("password"));
  }

  static Field handle(String typed) {
    return Field.of("handle", "Name here")
        .hint("3 to 30 letters, digits, - and _. Everybody sees it beside what you post.")
        .value(typed)
        .autocomplete("username")
        .maxLength(HANDLE_LENGTH)
        .required();
  }

  static Field email(String typed) {
    return Field.of("email", "Mail address")
        .hint("If you like: only for a forgotten password and for watches you set. Nobody sees it.")
        .value(typed)
        .type("email")
        .autocomplete("email")
        .maxLength(EMAIL_LENGTH);
  }

  static Field newPassword(String name) {
    return Field.of(name, "Password")
        .hint("8 characters or more; a few words are better than one odd one.")
        .type("password")
        .autocomplete("new-password")
        .maxLength(PASSWORD_LENGTH)
        .required();
  }

  /** The present password, as proof. */
  static Field proof() {
    return Field.of("password", "Your password")
        .hint("So that it is you.")
        .type("password")
        .autocomplete("current-password")
        .maxLength(PASSWORD_LENGTH)
        .required();
  }
}
